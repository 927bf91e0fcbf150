package wallplate.command;

import java.util.HashSet;
import java.util.Locale;
import java.util.Set;

/**
 * The names of the result files of one run: no two alike, not even where a file system ignores capitals.
 */
final class ResultNames {

    private final Set<String> taken = new HashSet<>();

    /**
     * A name that no other sheet of the run has.
     *
     * @param isShared whether another sheet would have had the wished name, so that this one got a number
     */
    record ResultName(String name, boolean isShared) {}

    /**
     * The name for a page of a scan file: the file's name without its ending, with the page where there are several.
     */
    ResultName forPage(String scan, int page, boolean severalPages) {
        String wished = withoutEnding(scan) + (severalPages ? "-p" + page : "");
        String name = wished;
        for (int number = 2; !taken.add(name.toLowerCase(Locale.ROOT)); number++) {
            name = wished + "-" + number;
        }
        return new ResultName(name, !name.equals(wished));
    }

    private static String withoutEnding(String scan) {
        String file = scan.substring(Math.max(scan.lastIndexOf('/'), scan.lastIndexOf('\\')) + 1);
        int dot = file.lastIndexOf('.');
        return dot > 0 ? file.substring(0, dot) : file;
    }
}
