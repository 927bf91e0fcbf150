package wallplate.web.sets;

import wallplate.records.Learner;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.web.page.Words;

/**
 * A sheet as a row of its set's page shows it. It is all words, because a page of two hundred rows is slow where each row
 * works its words out in the template.
 *
 * @param learner whose it is
 * @param given what stands in the field in which the learner is changed
 * @param told how the sheet came to its learner
 * @param why a person is needed; empty where none is
 */
record SheetRow(
        long id,
        int number,
        String address,
        String label,
        String learner,
        String given,
        String told,
        String file,
        String standing,
        String marks,
        String why,
        boolean failed) {

    static SheetRow of(SheetEntry sheet, Words words) {
        return new SheetRow(
                sheet.id(),
                sheet.number(),
                "/sheets/" + sheet.id(),
                sheet.label(),
                sheet.learner().map(Learner::name).orElse("nobody yet"),
                sheet.learner().map(Learner::nameAndNumber).orElse(""),
                words.say("matched." + (sheet.learner().isPresent() ? sheet.matchedBy().word() : "nobody")),
                sheet.page() > 1 ? sheet.fileName() + ", page " + sheet.page() : sheet.fileName(),
                standing(sheet),
                marks(sheet, words),
                why(sheet),
                sheet.state() == SheetState.FAILED);
    }

    /** The same with what somebody typed into the field in which the learner is changed. */
    SheetRow withGiven(String typed) {
        return new SheetRow(id, number, address, label, learner, typed, told, file, standing, marks, why, failed);
    }

    private static String standing(SheetEntry sheet) {
        boolean seen = sheet.checkedAt().isPresent();
        return switch (sheet.state()) {
            case WAITING -> "waits to be read";
            case READING -> "is being read";
            case UNREADABLE -> seen ? "could not be read; seen" : "could not be read";
            case FAILED -> "set aside";
            case READ -> seen ? "checked" : sheet.needsPerson() ? "marked, needs you" : "marked";
        };
    }

    private static String marks(SheetEntry sheet, Words words) {
        if (sheet.state() != SheetState.READ) {
            return "";
        }
        String marks = words.marks(sheet.awarded()) + " / " + words.marks(sheet.available());
        return sheet.undecided() == 0 ? marks : marks + " + " + sheet.undecided() + " open";
    }

    private static String why(SheetEntry sheet) {
        String warnings = String.join(" ", sheet.warnings());
        if (sheet.reason().isPresent()) {
            return (sheet.reason().get() + " " + warnings).strip();
        }
        String open = switch (sheet.undecided()) {
            case 0 -> "";
            case 1 -> "One criterion could not be decided. ";
            default -> sheet.undecided() + " criteria could not be decided. ";
        };
        return (open + warnings).strip();
    }
}
