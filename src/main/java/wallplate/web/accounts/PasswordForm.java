package wallplate.web.accounts;

import java.util.LinkedHashMap;
import java.util.Map;
import wallplate.accounts.Passwords;
import wallplate.web.page.Words;

/** A password typed twice. */
final class PasswordForm {

    private PasswordForm() {}

    /** What is wrong, by field. */
    static Map<String, String> faults(Passwords passwords, Words words, String name, String password, String again) {
        Map<String, String> faults = new LinkedHashMap<>();
        passwords.fault(password, name).ifPresent(fault -> faults.put("password", sentence(words, fault)));
        if (faults.isEmpty() && !password.equals(again)) {
            faults.put("again", words.say("password.differs"));
        }
        return faults;
    }

    private static String sentence(Words words, Passwords.Fault fault) {
        return switch (fault) {
            case TOO_SHORT -> words.say("password.too-short", Passwords.SHORTEST);
            case TOO_LONG -> words.say("password.too-long", Passwords.LONGEST);
            case EASILY_GUESSED -> words.say("password.easily-guessed");
        };
    }
}
