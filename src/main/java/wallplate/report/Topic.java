package wallplate.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Verdict;
import wallplate.measure.Finding;

/**
 * One thing to do better next time: the lost marks that belong together because they hang on one part of the drawing.
 *
 * @param part the part's key, such as {@code gutter}, or {@code scale} where a wrong scale explains them; a
 *     criterion's id where its marks hang on no single part
 * @param marks in the guideline's order, each with something to gain
 */
public record Topic(String part, List<Mark> marks) {

    /** Stands for a part where a wrong scale explains the marks. */
    public static final String SCALE = "scale";

    private static final String WRONG_SCALE = "wrong-scale";

    public Topic {
        marks = List.copyOf(marks);
    }

    /** The marks that putting it right would bring. */
    public double gain() {
        return marks.stream()
                .mapToDouble(mark -> mark.available() - mark.awarded())
                .sum();
    }

    /** Whether nothing of it is drawn. */
    public boolean isNotDrawn() {
        return marks.stream()
                .allMatch(mark -> mark.measured().filter(Topic::isNothing).isPresent());
    }

    private static boolean isNothing(Finding finding) {
        return finding instanceof Finding.Absent || finding instanceof Finding.Count count && count.number() == 0;
    }

    /** The topics that would gain most, the greatest gain first, at most as many as asked for. */
    public static List<Topic> greatest(MarkedSheet sheet, int most) {
        Map<String, List<Mark>> byPart = new LinkedHashMap<>();
        sheet.marks().stream()
                .filter(mark -> mark.verdict() == Verdict.NOT_MET && mark.awarded() < mark.available())
                .forEach(mark -> byPart.computeIfAbsent(cause(mark), part -> new ArrayList<>())
                        .add(mark));
        return byPart.entrySet().stream()
                .map(entry -> new Topic(entry.getKey(), entry.getValue()))
                .sorted(Comparator.comparingDouble((Topic topic) -> -topic.gain()))
                .limit(most)
                .toList();
    }

    private static String cause(Mark mark) {
        if (mark.slips().equals(List.of(WRONG_SCALE))) {
            return SCALE;
        }
        return mark.key().map(Topic::partOf).orElse(mark.criterion());
    }

    /** The part that a key belongs to. */
    public static String partOf(String key) {
        int dot = key.indexOf('.');
        return dot < 0 ? key : key.substring(0, dot);
    }
}
