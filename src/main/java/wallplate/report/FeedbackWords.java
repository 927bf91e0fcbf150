package wallplate.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import wallplate.marking.LineWords;
import wallplate.marking.Mark;
import wallplate.marking.Phrases;
import wallplate.marking.TradeNames;
import wallplate.marking.ValueWords;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;

/** The words of one sheet's feedback, on paper and on the web alike. */
public record FeedbackWords(Phrases phrases, TradeNames names, ValueWords values) {

    /** As many things as a learner can put right next time. */
    public static final int TOPICS = 3;

    private static final int SENTENCES = 3;
    private static final int PRAISED = 8;
    private static final int SAME_CAUSE = 6;

    public static FeedbackWords in(Locale language, ExpectedDrawing expected) {
        return new FeedbackWords(
                Phrases.of("messages.report", language),
                TradeNames.in(language, expected.task()),
                ValueWords.in(language));
    }

    public String text(String key) {
        return phrases.text(key);
    }

    public String text(String key, Map<String, String> places) {
        return phrases.text(key, places);
    }

    /** What stands over the things that would gain most. */
    public String head(List<Topic> topics) {
        String head = topics.isEmpty() ? "next.none" : topics.size() == 1 ? "next.one" : "next.head";
        return text(head, Map.of("count", values.number(topics.size())));
    }

    /** What stands over a topic. */
    public String heading(Topic topic) {
        if (topic.marks().size() == 1) {
            return topic.marks().get(0).title();
        }
        return names.heading(topic.part());
    }

    /** How much it would bring. */
    public String gain(Topic topic) {
        return text(
                topic.gain() == 1 ? "next.gain-one" : "next.gain",
                Map.of("marks", values.marks(topic.gain())));
    }

    /** What a topic says to the learner. */
    public List<String> sentences(Topic topic) {
        List<String> sentences = new ArrayList<>();
        if (topic.isNotDrawn() && topic.marks().size() > 1) {
            sentences.add(
                    text("next.not-drawn", Map.of("part", names.part(topic.part()))));
            topic.marks().stream()
                    .filter(mark -> mark.expected().filter(FeedbackWords::isSize).isPresent())
                    .map(mark -> mark.title() + ": "
                            + values.asked(mark.expected().get()))
                    .forEach(sentences::add);
            return sentences;
        }
        if (topic.part().equals(Topic.SCALE) && topic.marks().size() > 1) {
            sentences.add(sentence(topic.marks().get(0)));
            List<Mark> others = topic.marks().subList(1, topic.marks().size());
            String more = others.size() > SAME_CAUSE ? " \u2026" : "";
            sentences.add(text(
                    "next.same-cause",
                    Map.of(
                            "count", values.number(others.size()),
                            "titles",
                                    others.stream()
                                            .limit(SAME_CAUSE)
                                            .map(Mark::title)
                                            .collect(Collectors.joining(", ", "", more)))));
            return sentences;
        }
        boolean single = topic.marks().size() == 1;
        topic.marks().stream()
                .limit(SENTENCES)
                .map(mark -> single ? mark.feedback() : sentence(mark))
                .forEach(sentences::add);
        return sentences;
    }

    /** What a mark says with the name of what was measured before it, for a place that does not name it already. */
    public static String sentence(Mark mark) {
        return mark.feedback().startsWith(mark.title()) ? mark.feedback() : mark.title() + ". " + mark.feedback();
    }

    private static boolean isSize(Expected asked) {
        return !(asked instanceof Expected.YesNo) && !(asked instanceof Expected.Word);
    }

    /** What was done well; where nothing could be told, how to begin. */
    public String praise(Praise praise) {
        List<String> sentences = new ArrayList<>();
        if (!praise.wholeParts().isEmpty()) {
            String parts = praise.wholeParts().stream().map(names::part).collect(Collectors.joining(", "));
            sentences.add(text("praise.parts", Map.of("parts", parts)));
        }
        if (!praise.single().isEmpty()) {
            String titles =
                    praise.single().stream().limit(PRAISED).map(Mark::title).collect(Collectors.joining(", "));
            sentences.add(text("praise.single", Map.of("titles", titles)));
        }
        return sentences.isEmpty() ? text("praise.start") : String.join(" ", sentences);
    }

    /** How the lines themselves are drawn, marked or not; nothing for a sheet that was measured before they were. */
    public List<String> lines(MeasuredSheet measured) {
        return LineWords.in(phrases.language()).statements(measured);
    }

    /** What was asked for; nothing where a criterion asks for no single value. */
    public String asked(Mark mark) {
        return mark.expected().map(values::asked).orElse("");
    }

    /** What still counts; nothing where there is nothing to tolerate. */
    public String tolerance(Mark mark) {
        return mark.expected()
                .flatMap(asked -> mark.tolerance().map(tolerance -> tolerance(asked, tolerance)))
                .orElse("");
    }

    public String verdict(Mark mark) {
        return text("verdict." + mark.verdict().word());
    }

    /** The verdict or, beside the sign for it, that a person changed the marks that it brings: there is no room for both. */
    public String verdictOnPaper(Mark mark) {
        return mark.isLowered() ? text("verdict.changed") : verdict(mark);
    }

    /** What was drawn, or that it was not or cannot be told. */
    public String drawn(Mark mark) {
        if (mark.expected().isEmpty() || mark.measured().isEmpty()) {
            return "";
        }
        Finding finding = mark.measured().get();
        if (finding instanceof Finding.Absent) {
            return text("finding.absent");
        }
        if (finding instanceof Finding.Uncertain) {
            return text("finding.uncertain");
        }
        return values.found(mark.expected().get(), finding);
    }

    private String tolerance(Expected asked, double tolerance) {
        if (tolerance == 0) {
            return text("table.exactly");
        }
        return "\u00b1 " + values.tolerance(asked, tolerance);
    }

    /** The marks given and those that could be had. */
    public String marks(Mark mark) {
        return text(
                "table.of",
                Map.of(
                        "awarded", values.marks(mark.awarded()),
                        "available", values.marks(mark.available())));
    }
}
