package wallplate.task;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/** Finds the known word that a mistyped one was probably meant to be. */
final class NearestWord {

    /** Letters added, left out or changed; more than that, and it is another word. */
    private static final int FARTHEST = 2;

    private NearestWord() {}

    static Optional<String> among(Collection<String> known, String typed) {
        return known.stream()
                .filter(word -> Math.abs(word.length() - typed.length()) <= FARTHEST)
                .filter(word -> edits(word, typed) <= Math.min(FARTHEST, word.length() / 2))
                .min(Comparator.comparingInt((String word) -> edits(word, typed))
                        .thenComparing(word -> word));
    }

    /** The least number of single letters to add, leave out or change (Levenshtein's distance). */
    private static int edits(String from, String to) {
        int[] before = new int[to.length() + 1];
        for (int j = 0; j <= to.length(); j++) {
            before[j] = j;
        }
        for (int i = 1; i <= from.length(); i++) {
            int[] now = new int[to.length() + 1];
            now[0] = i;
            for (int j = 1; j <= to.length(); j++) {
                int changed = before[j - 1] + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
                now[j] = Math.min(changed, 1 + Math.min(before[j], now[j - 1]));
            }
            before = now;
        }
        return before[to.length()];
    }
}
