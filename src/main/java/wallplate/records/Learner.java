package wallplate.records;

/**
 * One learner of a class.
 *
 * @param position the place in the class list, from 1
 * @param name what the learner goes by: the name, or the candidate number where the class goes by numbers
 * @param candidateNumber the number beside the name; empty where there is none
 */
public record Learner(long id, int position, String name, String candidateNumber) {

    /** Longer ones would make the squares of a printed code too small for a poor scan. */
    private static final String FITS_A_CODE = "[A-Za-z0-9._-]{1,12}";

    private static final String PLACE = "L[0-9]+";

    /**
     * How the code on a printed sheet names the learner: the candidate number where it fits, which stays the same when
     * the class list changes, else the place in the list.
     */
    public String sheetCode() {
        return candidateNumber.matches(FITS_A_CODE) && !candidateNumber.matches(PLACE)
                ? candidateNumber
                : placeCode();
    }

    /** The place in the list as a code has it. */
    String placeCode() {
        return "L" + position;
    }

    /** The name with the candidate number in brackets where there is one, as lists show it. */
    public String nameAndNumber() {
        return candidateNumber.isEmpty() || candidateNumber.equals(name) ? name : name + " (" + candidateNumber + ")";
    }
}
