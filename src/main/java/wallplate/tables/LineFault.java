package wallplate.tables;

/**
 * What is wrong with a list, and where.
 *
 * @param line of the file, from 1; 0 where the file as a whole is meant
 */
public record LineFault(int line, String sentence) {

    /** The fault with its line before it. */
    public String text() {
        return line == 0 ? sentence : "Line " + line + ": " + sentence;
    }
}
