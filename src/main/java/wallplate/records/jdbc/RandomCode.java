package wallplate.records.jdbc;

import java.security.SecureRandom;
import java.util.Locale;

/** Codes that nobody guesses and that are copied from paper without error. */
final class RandomCode {

    /** No letter or figure that is read as another when it is copied from a board. */
    private static final String LETTERS = "ACDEFHJKLMNPRTUVWXY347";

    private static final SecureRandom RANDOM = new SecureRandom();

    private RandomCode() {}

    static String ofLength(int length) {
        StringBuilder code = new StringBuilder(length);
        for (int place = 0; place < length; place++) {
            code.append(LETTERS.charAt(RANDOM.nextInt(LETTERS.length())));
        }
        return code.toString();
    }

    /** What was typed without the marks that part a code into pieces, in capitals. */
    static String plain(String typed) {
        return typed.replaceAll("[^\\p{Alnum}]", "").toUpperCase(Locale.ROOT);
    }
}
