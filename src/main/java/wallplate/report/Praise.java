package wallplate.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Verdict;

/**
 * What was done well on a sheet.
 *
 * @param wholeParts parts of which everything that could be judged is right
 * @param single criteria that are right in parts that are not
 */
public record Praise(List<String> wholeParts, List<Mark> single) {

    public Praise {
        wholeParts = List.copyOf(wholeParts);
        single = List.copyOf(single);
    }

    public static Praise of(MarkedSheet sheet) {
        Map<String, List<Mark>> byPart = new LinkedHashMap<>();
        sheet.marks().stream().filter(mark -> mark.key().isPresent()).forEach(mark -> byPart.computeIfAbsent(
                        Topic.partOf(mark.key().get()), part -> new ArrayList<>())
                .add(mark));
        List<String> whole = new ArrayList<>();
        List<Mark> single = new ArrayList<>();
        byPart.forEach((part, marks) -> {
            List<Mark> right = marks.stream().filter(Praise::isRight).toList();
            if (marks.stream().allMatch(mark -> isRight(mark) || mark.verdict() == Verdict.UNDECIDED)
                    && !right.isEmpty()) {
                whole.add(part);
            } else {
                single.addAll(right);
            }
        });
        return new Praise(whole, single);
    }

    private static boolean isRight(Mark mark) {
        return mark.verdict() == Verdict.MET || mark.verdict() == Verdict.CARRIED;
    }
}
