package wallplate.remarking;

import java.util.List;
import wallplate.marking.MarkPreview;
import wallplate.marking.MarkedSheet;
import wallplate.records.SheetEntry;

/**
 * What a guideline would make of one sheet.
 *
 * @param marked the marks that the guideline gives, without what a person decided
 * @param preview the marks as they stand now and as they would stand, what a person decided among them
 * @param byHand every mark that a person set
 */
public record SheetPreview(
        SheetEntry sheet,
        MarkedSheet marked,
        MarkPreview preview,
        double availableAfter,
        int undecidedAfter,
        List<HandMark> byHand) {

    public SheetPreview {
        byHand = List.copyOf(byHand);
    }

    /** Whether any mark or the total would differ. */
    public boolean isChanged() {
        return preview.changesAnything() || sheet.available() != availableAfter;
    }

    /** The marks set by hand that the new run would give otherwise. */
    public List<HandMark> differing() {
        return byHand.stream().filter(HandMark::differs).toList();
    }
}
