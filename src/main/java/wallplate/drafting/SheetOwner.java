package wallplate.drafting;

import wallplate.sheet.SheetCode;

/**
 * Whose drawing sheet it is, as its title block and its code say; empty texts are left for the learner to fill in.
 *
 * @param learnerId the learner's id in the class list: letters, digits, {@code .}, {@code _} and hyphens
 * @param learnerName as it is to be lettered
 * @param sheetNumber the sheet's number within the learner's set, from 1
 */
public record SheetOwner(String learnerId, String learnerName, String className, String date, int sheetNumber) {

    /** A sheet that anybody may take. */
    public static SheetOwner anybody(int sheetNumber) {
        return new SheetOwner("", "", "", "", sheetNumber);
    }

    SheetCode code(String taskId) {
        return new SheetCode(taskId, learnerId, sheetNumber);
    }
}
