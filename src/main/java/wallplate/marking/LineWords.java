package wallplate.marking;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;

/** The sentences about the lines themselves: how they are drawn, and how that compares with ISO 128-2. */
public final class LineWords {

    /** The breadths of ISO 128-2 that a pencil can draw, in millimetres; from memory. */
    private static final List<Double> SERIES = List.of(0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0, 1.4);

    private final Phrases phrases;
    private final ValueWords values;
    private final Reasons reasons;

    private LineWords(Phrases phrases) {
        this.phrases = phrases;
        this.values = new ValueWords(phrases);
        this.reasons = Reasons.in(phrases.language());
    }

    /** The sentences in a language. */
    public static LineWords in(Locale language) {
        return new LineWords(Phrases.of(Wording.BUNDLE, language));
    }

    /** What a criterion about an aspect is called, without what it accepts. */
    public String name(LineAspect aspect) {
        return phrases.text("title.lines." + aspect.word());
    }

    String title(Subject.Lines lines) {
        return phrases.text(
                "title.lines", Map.of("what", name(lines.aspect()), "accepted", accepted(lines)));
    }

    String met(Subject.Lines lines, double value) {
        return phrases.text("lines.met", Map.of("says", says(lines.aspect(), value), "accepted", accepted(lines)));
    }

    String notMet(Subject.Lines lines, double value, double partMarks) {
        String direction = value > lines.accepted().to() ? ".too-much" : ".too-little";
        String sentence = phrases.text(
                "lines.not-met",
                Map.of(
                        "says", says(lines.aspect(), value),
                        "accepted", accepted(lines),
                        "advice", phrases.text("lines.advice." + lines.aspect().word() + direction)));
        return partMarks > 0 ? sentence + " " + phrases.text("feedback.part-marks") : sentence;
    }

    String borderline(Subject.Lines lines, double value) {
        return phrases.text("lines.borderline", Map.of("says", says(lines.aspect(), value), "accepted", accepted(lines)));
    }

    String nothingLeft() {
        return phrases.text("lines.nothing-left");
    }

    private String says(LineAspect aspect, double value) {
        String number = !aspect.unit().isEmpty() ? "" : value == 0 ? ".none" : value == 1 ? ".one" : "";
        return phrases.text("lines.says." + aspect.word() + number, Map.of("value", value(aspect, value)));
    }

    /** What is accepted, such as "0.35 to 0.7 mm" or "2 at most". */
    private String accepted(Subject.Lines lines) {
        LineAspect aspect = lines.aspect();
        LineRange range = lines.accepted();
        if (range.from() == 0) {
            return phrases.text("lines.at-most", Map.of("to", value(aspect, range.to())));
        }
        if (range.to() == aspect.most()) {
            return phrases.text("lines.at-least", Map.of("from", value(aspect, range.from())));
        }
        return phrases.text(
                "lines.between", Map.of("from", number(aspect, range.from()), "to", value(aspect, range.to())));
    }

    private String value(LineAspect aspect, double value) {
        return aspect.unit().isEmpty() ? number(aspect, value) : number(aspect, value) + " " + aspect.unit();
    }

    private String number(LineAspect aspect, double value) {
        return values.decimal(value, aspect.unit().equals("mm") ? 2 : 0);
    }

    /** What there is to say of a sheet's lines, marked or not; nothing for a sheet that was measured before they were. */
    public List<String> statements(MeasuredSheet measured) {
        List<String> statements = new ArrayList<>();
        for (LineAspect aspect : List.of(
                LineAspect.OUTLINE_BREADTH,
                LineAspect.HATCHING_BREADTH,
                LineAspect.DIMENSION_BREADTH,
                LineAspect.CONSTRUCTION_DARKNESS,
                LineAspect.POOR_CORNERS)) {
            aspect.reading(measured)
                    // Most drawings have no dimension: nothing to say about them, then.
                    .filter(found -> aspect != LineAspect.DIMENSION_BREADTH || found.isMeasured())
                    .map(found -> statement(aspect, found, measured))
                    .ifPresent(statements::add);
        }
        return List.copyOf(statements);
    }

    private String statement(LineAspect aspect, Finding found, MeasuredSheet measured) {
        if (found instanceof Finding.Quantity quantity) {
            String says = says(aspect, quantity.value()) + ".";
            return comparison(aspect, quantity, measured).map(more -> says + " " + more).orElse(says);
        }
        if (found instanceof Finding.Count count) {
            return says(aspect, count.number()) + ".";
        }
        if (found instanceof Finding.Uncertain uncertain) {
            return phrases.text(
                    "lines.cannot-tell", Map.of("what", name(aspect), "reason", reasons.say(uncertain.reason())));
        }
        return phrases.text("lines.nothing-left");
    }

    private Optional<String> comparison(LineAspect aspect, Finding.Quantity found, MeasuredSheet measured) {
        return switch (aspect) {
            case OUTLINE_BREADTH -> Optional.of(phrases.text(
                    "lines.series", Map.of("nearest", value(aspect, nearest(found.value())))));
            case HATCHING_BREADTH -> proportion(LineAspect.HATCHING_SHARE, measured);
            case DIMENSION_BREADTH -> proportion(LineAspect.DIMENSION_SHARE, measured);
            case CONSTRUCTION_DARKNESS -> Optional.of(phrases.text("lines.construction"));
            default -> Optional.empty();
        };
    }

    private Optional<String> proportion(LineAspect share, MeasuredSheet measured) {
        return share.reading(measured)
                .filter(Finding.Quantity.class::isInstance)
                .map(found -> 100 / ((Finding.Quantity) found).value())
                .map(times -> phrases.text("lines.proportion", Map.of("times", values.decimal(times, 1))));
    }

    /** The nearest of the series, whose steps are proportions. */
    private static double nearest(double breadth) {
        double nearest = SERIES.get(0);
        for (double one : SERIES) {
            nearest = Math.abs(Math.log(one / breadth)) < Math.abs(Math.log(nearest / breadth)) ? one : nearest;
        }
        return nearest;
    }
}
