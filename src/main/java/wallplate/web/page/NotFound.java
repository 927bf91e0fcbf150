package wallplate.web.page;

/** What an address names is not there. */
public class NotFound extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /**
     * @param what one sentence for the reader, such as "There is no sheet 7."
     */
    public NotFound(String what) {
        super(what);
    }
}
