package wallplate.analysis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wallplate.marking.Verdict;
import wallplate.records.MarkEntry;
import wallplate.records.SheetEntry;

/**
 * Learners who are to practise the same part of the drawing again.
 *
 * <p>Groups are few: the part that most learners missed takes all of these, then the part that most of the others
 * missed, and so on. So each learner stands in one group and practises something that he or she missed, though not always
 * what cost most. A learner who missed nothing stands in none; an undecided mark is not missed.
 *
 * @param part the part's key, such as {@code gutter}; a criterion's id where it hangs on no part
 * @param members in the set's order, never empty
 */
public record FollowUpGroup(String part, List<Member> members) {

    /**
     * @param missed what this learner missed of the group's part, in the guideline's order
     * @param elsewhere how many criteria of other parts the learner missed as well
     */
    public record Member(SheetEntry sheet, List<MarkEntry> missed, int elsewhere) {

        public Member {
            missed = List.copyOf(missed);
        }
    }

    public FollowUpGroup {
        members = List.copyOf(members);
    }

    /** The groups of a set, the largest first. */
    public static List<FollowUpGroup> of(List<SheetEntry> sheets, List<MarkEntry> marks) {
        Map<Long, Map<String, List<MarkEntry>>> missed = missed(marks);
        List<SheetEntry> left = new ArrayList<>(
                sheets.stream().filter(sheet -> missed.containsKey(sheet.id())).toList());
        List<FollowUpGroup> groups = new ArrayList<>();
        while (!left.isEmpty()) {
            String part = missedByMost(left, missed);
            List<SheetEntry> group =
                    left.stream().filter(sheet -> missed.get(sheet.id()).containsKey(part)).toList();
            groups.add(new FollowUpGroup(
                    part, group.stream().map(sheet -> member(sheet, part, missed.get(sheet.id()))).toList()));
            left.removeAll(group);
        }
        return groups;
    }

    /** Missed marks by sheet and part; sheets that missed nothing are left out. */
    private static Map<Long, Map<String, List<MarkEntry>>> missed(List<MarkEntry> marks) {
        Map<Long, Map<String, List<MarkEntry>>> missed = new LinkedHashMap<>();
        marks.stream()
                .filter(mark -> mark.verdict() == Verdict.NOT_MET)
                .forEach(mark -> missed.computeIfAbsent(mark.sheetId(), sheet -> new LinkedHashMap<>())
                        .computeIfAbsent(part(mark), part -> new ArrayList<>())
                        .add(mark));
        return missed;
    }

    private static String part(MarkEntry mark) {
        return mark.key()
                .map(key -> key.indexOf('.') < 0 ? key : key.substring(0, key.indexOf('.')))
                .orElse(mark.criterion());
    }

    /** Of parts that as many missed, the one that cost more marks; then by name, so that the same set gives the same groups. */
    private static String missedByMost(List<SheetEntry> left, Map<Long, Map<String, List<MarkEntry>>> missed) {
        Map<String, Integer> learners = new LinkedHashMap<>();
        Map<String, Double> lost = new LinkedHashMap<>();
        left.forEach(sheet -> missed.get(sheet.id()).forEach((part, marks) -> {
            learners.merge(part, 1, Integer::sum);
            lost.merge(part, marks.stream().mapToDouble(mark -> mark.available() - mark.awarded()).sum(), Double::sum);
        }));
        return learners.keySet().stream()
                .min(Comparator.comparingInt((String part) -> -learners.get(part))
                        .thenComparingDouble(part -> -lost.get(part))
                        .thenComparing(Comparator.naturalOrder()))
                .orElseThrow();
    }

    private static Member member(SheetEntry sheet, String part, Map<String, List<MarkEntry>> missed) {
        int all = missed.values().stream().mapToInt(List::size).sum();
        List<MarkEntry> here = missed.get(part);
        return new Member(sheet, here, all - here.size());
    }
}
