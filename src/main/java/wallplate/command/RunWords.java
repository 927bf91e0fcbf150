package wallplate.command;

import java.util.Locale;
import java.util.Map;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.Phrases;
import wallplate.marking.Reasons;

/** What a run of the command says, in a language: English where it has no words in that. */
final class RunWords {

    private final Phrases phrases;
    private final Reasons reasons;
    private final String decimalSign;

    RunWords(Locale language) {
        this.phrases = Phrases.of("messages.command", language);
        this.reasons = Reasons.in(language);
        this.decimalSign = Phrases.of("messages.marking", phrases.language()).text("value.decimal-sign");
    }

    /** The scan, with its page where that is not the first. */
    String place(String scan, int page) {
        return page == 1 ? scan : phrases.text("place.page", Map.of("scan", scan, "page", String.valueOf(page)));
    }

    /** What became of a sheet. */
    String outcome(AssessedSheet sheet) {
        String outcome = sheet instanceof AssessedSheet.Read read ? marks(read) : reason(sheet);
        return place(sheet.scan(), sheet.page()) + ": " + outcome;
    }

    private String marks(AssessedSheet.Read read) {
        return phrases.text(
                "sheet.read",
                Map.of(
                        "awarded", marks(read.marked().awarded()),
                        "available", marks(read.marked().available()),
                        "undecided", String.valueOf(read.marked().undecided())));
    }

    private String reason(AssessedSheet sheet) {
        String reason = ((AssessedSheet.Unreadable) sheet).reason();
        return phrases.text("sheet.unreadable", Map.of("reason", reasons.say(reason)));
    }

    String sharedName(AssessedSheet sheet, String name) {
        return phrases.text("warning.shared-name", Map.of("sheet", place(sheet.scan(), sheet.page()), "name", name));
    }

    String earlierRun(String folder) {
        return phrases.text("warning.earlier-run", Map.of("folder", folder));
    }

    String passedOver(String file) {
        return phrases.text("warning.passed-over", Map.of("file", file));
    }

    String fault(String scan, int page, Exception fault) {
        return phrases.text(
                "fault",
                Map.of("sheet", place(scan, page), "fault", fault.toString().replaceAll("\\s+", " ")));
    }

    private String marks(double marks) {
        return marks == Math.rint(marks) ? String.valueOf((long) marks) : String.valueOf(marks).replace(".", decimalSign);
    }
}
