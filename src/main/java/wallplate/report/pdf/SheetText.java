package wallplate.report.pdf;

import java.util.Locale;
import java.util.Map;
import wallplate.marking.Phrases;
import wallplate.marking.TradeNames;
import wallplate.marking.ValueWords;
import wallplate.solver.ExpectedDrawing;

/** The words of one sheet's report. */
record SheetText(Phrases phrases, TradeNames names, ValueWords values) {

    static SheetText in(Locale language, ExpectedDrawing expected) {
        return new SheetText(
                Phrases.of("messages.report", language),
                TradeNames.in(language, expected.task()),
                ValueWords.in(language));
    }

    String text(String key) {
        return phrases.text(key);
    }

    String text(String key, Map<String, String> places) {
        return phrases.text(key, places);
    }
}
