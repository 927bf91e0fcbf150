package wallplate.analysis;

import java.util.ArrayList;
import java.util.List;
import wallplate.statistics.ItemFigures;

/**
 * What a teacher may look at in a criterion. A remark is a question, not a verdict: a criterion that everybody meets may
 * be just what was to be learnt.
 */
public enum ItemRemark {
    /** Weaker learners did better, by more than chance makes of a class in which the criterion tells nothing. */
    AGAINST("Learners with low totals did better in it: look whether the criterion asks what it should."),
    /** Below .20 of discrimination, which Ebel (1965, Measuring Educational Achievement) calls poor; bound from memory. */
    TELLS_LITTLE("It hardly tells strong from weak sheets."),
    /** Full marks on every sheet. */
    ALL("Everybody has it."),
    /** Common practice. */
    EASY("Nearly everybody has it."),
    /** Common practice. */
    HARD("Hardly anybody has it: teach it again, or look whether it was asked clearly."),
    /** No mark on any sheet. */
    NONE("Nobody has it: teach it again, or look whether it was asked clearly.");

    private static final double AGAINST_DISCRIMINATION = -0.1;
    private static final double POOR_DISCRIMINATION = 0.2;
    private static final double EASY_FACILITY = 0.9;
    private static final double HARD_FACILITY = 0.3;
    /** Far less than a half mark on one sheet of many thousands, far more than a mean's last digits. */
    private static final double ROUNDING = 1e-9;

    private final String sentence;

    ItemRemark(String sentence) {
        this.sentence = sentence;
    }

    public String sentence() {
        return sentence;
    }

    /** The remarks on one criterion; that it tells little is not said of one that is very easy or hard anyway. */
    public static List<ItemRemark> on(ItemFigures figures) {
        List<ItemRemark> remarks = new ArrayList<>();
        double facility = figures.facility().told().orElse(0.5);
        double discrimination = figures.discrimination().told().orElse(1.0);
        if (facility >= EASY_FACILITY) {
            remarks.add(facility > 1 - ROUNDING ? ALL : EASY);
        } else if (facility <= HARD_FACILITY) {
            remarks.add(facility < ROUNDING ? NONE : HARD);
        }
        if (discrimination < AGAINST_DISCRIMINATION) {
            remarks.add(AGAINST);
        } else if (discrimination < POOR_DISCRIMINATION && remarks.isEmpty()) {
            remarks.add(TELLS_LITTLE);
        }
        return List.copyOf(remarks);
    }
}
