package wallplate.marking;

import java.util.List;
import java.util.Locale;
import wallplate.measure.MeasuredSheet;
import wallplate.solver.ExpectedDrawing;

/** Marks a measured sheet by a guideline: the same guideline on the same measurements always gives the same marks. */
public final class Marker {

    private final Locale language;

    /** A marker that words its feedback in English. */
    public Marker() {
        this(Locale.ENGLISH);
    }

    /** A marker that words its feedback in a language; English stands in where there is no such one. */
    public Marker(Locale language) {
        this.language = language;
    }

    /** One mark for each criterion, in the guideline's order. */
    public MarkedSheet mark(Guideline guideline, ExpectedDrawing expected, MeasuredSheet measured) {
        SheetJudge judge = new SheetJudge(guideline, expected, measured, new Wording(language, expected.task()));
        List<Mark> marks = guideline.criteria().stream().map(judge::mark).toList();
        return new MarkedSheet(guideline.version(), marks, groups(guideline));
    }

    private static List<GroupTotal> groups(Guideline guideline) {
        return guideline.groups().stream()
                .map(group -> new GroupTotal(
                        group.id(),
                        group.title(),
                        guideline.criteria().stream()
                                .filter(criterion -> criterion
                                        .group()
                                        .filter(group.id()::equals)
                                        .isPresent())
                                .map(Criterion::id)
                                .toList(),
                        group.maximum()))
                .toList();
    }
}
