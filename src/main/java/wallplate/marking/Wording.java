package wallplate.marking;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import wallplate.measure.Finding;
import wallplate.solver.Expected;
import wallplate.solver.SlipFit;
import wallplate.task.DrawingTask;
import wallplate.task.Scale;

/** The sentences of a marked sheet, to the learner: what was measured, what was asked, how to get it right. */
final class Wording {

    static final String BUNDLE = "messages.marking";

    /** A slip less probable than this is told with the doubt that remains. */
    private static final double SURE = 0.8;

    private final Phrases phrases;
    private final TradeNames names;
    private final ValueWords values;
    private final Reasons reasons;
    private final LineWords lines;

    Wording(Locale language, DrawingTask task) {
        this.phrases = Phrases.of(BUNDLE, language);
        this.names = new TradeNames(phrases, task);
        this.values = new ValueWords(phrases);
        this.reasons = Reasons.in(language);
        this.lines = LineWords.in(language);
    }

    String title(Subject subject) {
        if (subject instanceof Subject.OneKey one) {
            return names.title(one.key());
        }
        if (subject instanceof Subject.SeveralKeys several) {
            return several.keys().stream().map(names::title).collect(Collectors.joining(", "));
        }
        if (subject instanceof Subject.PartDrawn drawn) {
            return phrases.text("title.part-drawn", Map.of("part", names.part(drawn.part())));
        }
        if (subject instanceof Subject.Lines drawn) {
            return lines.title(drawn);
        }
        return phrases.text("title.teacher");
    }

    LineWords lines() {
        return lines;
    }

    String met(Expected asked, Finding found) {
        if (found instanceof Finding.YesNo) {
            return names.text("yes." + asked.key());
        }
        return phrases.text(
                "feedback.met", Map.of("measured", values.found(asked, found), "expected", values.asked(asked)));
    }

    String notDrawn(Expected asked) {
        Optional<String> ofItsOwn = phrases.find("feedback.not-drawn." + asked.key());
        if (ofItsOwn.isPresent()) {
            return names.fill(Phrases.fill(ofItsOwn.get(), Map.of("expected", values.askedWithWorking(asked))));
        }
        if (asked.key().endsWith(".spacing")) {
            return names.text("feedback.no-spacing", Map.of("expected", values.askedWithWorking(asked)));
        }
        if (asked instanceof Expected.Length || asked instanceof Expected.Angle) {
            return names.text("feedback.not-drawn", Map.of("expected", values.askedWithWorking(asked)));
        }
        return phrases.text("feedback.not-drawn-plain");
    }

    /** What is wrong: one fitting slip's own sentence says it all; where several fit, they are only named. */
    String wrong(Expected asked, Finding found, double tolerance, double partMarks, List<SlipFit> slips) {
        String sentence =
                switch (slips.size()) {
                    case 0 -> fact(asked, found, tolerance);
                    case 1 -> oneSlip(asked, found, slips.get(0));
                    default -> fact(asked, found, tolerance) + " " + severalSlips(slips);
                };
        return partMarks > 0 ? sentence + " " + phrases.text("feedback.part-marks") : sentence;
    }

    private String fact(Expected asked, Finding found, double tolerance) {
        if (found instanceof Finding.YesNo) {
            return names.text("no." + asked.key());
        }
        if (found instanceof Finding.Word) {
            return phrases.text(
                    "feedback.mirrored",
                    Map.of("measured", values.found(asked, found), "expected", values.asked(asked)));
        }
        if (found instanceof Finding.Count count && asked instanceof Expected.Count wanted) {
            String key = count.number() < wanted.number() ? "feedback.too-few" : "feedback.too-many";
            return phrases.text(
                    key,
                    Map.of(
                            "measured", values.found(asked, found),
                            "expected", values.askedWithWorking(asked)));
        }
        // How far something misses its place is neither too much nor too little.
        Optional<String> missed = phrases.find("feedback.missed." + asked.key());
        if (missed.isPresent()) {
            return names.fill(Phrases.fill(
                    missed.get(),
                    Map.of(
                            "measured", values.found(asked, found),
                            "tolerance", values.tolerance(asked, tolerance))));
        }
        return phrases.text(
                values.isTooMuch(asked, found)
                        ? "feedback.too-much." + kind(asked)
                        : "feedback.too-little." + kind(asked),
                Map.of(
                        "measured", values.found(asked, found),
                        "expected", values.askedWithWorking(asked),
                        "difference", values.difference(asked, found, tolerance),
                        "tolerance", values.tolerance(asked, tolerance)));
    }

    private static String kind(Expected asked) {
        return asked instanceof Expected.Angle ? "angle" : "length";
    }

    /** What a length is where the whole sheet is drawn at another scale. */
    String wholeSheetAtScale(Expected.Length asked, Finding.Quantity drawn, Scale other) {
        return phrases.text(
                "feedback.other-scale",
                Map.of(
                        "measured", values.found(asked, drawn),
                        "expected", values.askedWithWorking(asked),
                        "scale", other.toString()));
    }

    private String severalSlips(List<SlipFit> slips) {
        String fitting = slips.stream()
                .map(slip -> phrases.find("slip-name." + slip.slip()).orElse(slip.name()))
                .distinct()
                .collect(Collectors.joining("; "));
        return phrases.text("feedback.several-slips", Map.of("slips", fitting));
    }

    private String oneSlip(Expected asked, Finding found, SlipFit slip) {
        String sentence = slipSentence(asked, found, slip);
        return slip.namesACause() && slip.confidence() < SURE ? sentence + " " + phrases.text("feedback.likely-slip") : sentence;
    }

    private String slipSentence(Expected asked, Finding found, SlipFit slip) {
        boolean alreadyWorded = slip.name().isEmpty();
        return phrases.find("slip." + slip.slip())
                .filter(sentence -> !alreadyWorded)
                .map(sentence -> names.fill(Phrases.fill(
                        sentence,
                        Map.of(
                                "what", names.title(asked.key()),
                                "asked", values.asked(asked),
                                "drawn", values.found(asked, found)))))
                .orElse(slip.sentence());
    }

    String carried(Expected asked, Finding found, Consequences.Consequence consequence) {
        String causes = consequence.causes().stream().map(names::title).collect(Collectors.joining(", "));
        return phrases.text(
                "feedback.carried",
                Map.of(
                        "measured", values.found(asked, found),
                        "expected", values.asked(asked),
                        "follows", values.asked(consequence.expected()),
                        "causes", causes));
    }

    String borderline(Expected asked, Finding found, double tolerance) {
        return phrases.text(
                "feedback.borderline",
                Map.of(
                        "measured", values.found(asked, found),
                        "expected", values.asked(asked),
                        "tolerance", values.tolerance(asked, tolerance)));
    }

    String cannotTell(String reason) {
        return phrases.text("feedback.cannot-tell", Map.of("reason", reasons.say(reason)));
    }

    String notLookedFor() {
        return phrases.text("feedback.not-looked-for");
    }

    String teacherLooks(String note) {
        return phrases.text("feedback.teacher", Map.of("note", note));
    }

    String tooFewDrawn(Precondition needed) {
        return phrases.text(
                "feedback.precondition",
                Map.of("number", values.number(needed.atLeast()), "what", names.title(needed.key())));
    }

    String several(List<String> keys, List<Judgement> each) {
        String wrong = IntStream.range(0, keys.size())
                .filter(index -> !each.get(index).isRight())
                .mapToObj(index ->
                        names.title(keys.get(index)) + ": " + each.get(index).feedback())
                .collect(Collectors.joining(" "));
        return wrong.isEmpty() ? phrases.text("feedback.several-right") : wrong;
    }

    String severalOpen(long right, long open, int all) {
        return phrases.text(
                "feedback.several-open",
                Map.of("right", values.number(right), "open", values.number(open), "all", values.number(all)));
    }

    String partDrawn(String part) {
        return phrases.text("feedback.part-drawn", Map.of("part", names.part(part)));
    }

    String partNotDrawn(String part) {
        return phrases.text("feedback.part-not-drawn", Map.of("part", names.part(part)));
    }

    String partInDoubt(String part) {
        return phrases.text("feedback.part-in-doubt", Map.of("part", names.part(part)));
    }
}
