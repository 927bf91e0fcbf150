package wallplate.moderation;

import java.util.ArrayList;
import java.util.List;
import wallplate.moderation.Decision.Adjust;
import wallplate.records.MarkEntry;
import wallplate.task.PlainNumber;

/**
 * What an adjustment makes of the marks of a set: no mark falls below 0 or rises above its criterion's maximum.
 *
 * @param changes the marks that change
 * @param cut marks that change by less than was decided, because they meet 0 or the maximum
 * @param unchanged marks that stood at 0 or the maximum already
 * @param undecided marks that nobody has decided yet, which are left alone
 * @param outside sheets whose totals lie outside the limits
 */
public record Adjustment(
        Adjust decision, String title, List<Change> changes, int cut, int unchanged, int undecided, int outside) {

    /** One mark before and after. */
    public record Change(MarkEntry mark, double after) {}

    /** One mark and the total of its sheet. */
    public record Standing(MarkEntry mark, double total) {}

    public Adjustment {
        changes = List.copyOf(changes);
    }

    /** @param standings the marks of the decision's criterion, one a sheet */
    public static Adjustment of(Adjust decision, List<Standing> standings) {
        List<Change> changes = new ArrayList<>();
        int cut = 0;
        int unchanged = 0;
        int undecided = 0;
        int outside = 0;
        for (Standing standing : standings) {
            MarkEntry mark = standing.mark();
            double wanted = mark.awarded() + decision.by();
            double after = Math.max(0, Math.min(mark.available(), wanted));
            if (standing.total() < decision.fromTotal() || standing.total() > decision.toTotal()) {
                outside++;
            } else if (mark.isUndecided()) {
                undecided++;
            } else if (after == mark.awarded()) {
                unchanged++;
            } else {
                changes.add(new Change(mark, after));
                cut += after == wanted ? 0 : 1;
            }
        }
        String title = standings.isEmpty() ? decision.criterion() : standings.get(0).mark().title();
        return new Adjustment(decision, title, changes, cut, unchanged, undecided, outside);
    }

    /** What happened, in sentences. */
    public String words() {
        StringBuilder words = new StringBuilder("%s, by %s: %s changed"
                .formatted(title, signed(decision.by()), sheets(changes.size())));
        if (cut > 0) {
            words.append(" (%d of them by less, at 0 or the maximum)".formatted(cut));
        }
        words.append('.');
        append(words, unchanged, "stood at 0 or the maximum already.");
        append(words, undecided, "left alone, not decided yet.");
        append(words, outside, "left alone, total outside %s to %s."
                .formatted(PlainNumber.text(decision.fromTotal()), PlainNumber.text(decision.toTotal())));
        return words.toString();
    }

    private static void append(StringBuilder words, int count, String what) {
        if (count > 0) {
            words.append(' ').append(sheets(count)).append(' ').append(what);
        }
    }

    private static String sheets(int count) {
        return count == 1 ? "1 sheet" : count + " sheets";
    }

    private static String signed(double marks) {
        return (marks > 0 ? "+" : "−") + PlainNumber.text(Math.abs(marks));
    }
}
