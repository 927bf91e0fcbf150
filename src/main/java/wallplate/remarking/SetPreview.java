package wallplate.remarking;

import java.util.List;
import wallplate.marking.Guideline;

/**
 * What a guideline would make of a class set.
 *
 * @param fromVersion the guideline that the set is marked by now
 * @param sheets every sheet that was read, in the set's order
 */
public record SetPreview(String fromVersion, Guideline guideline, List<SheetPreview> sheets) {

    public SetPreview {
        sheets = List.copyOf(sheets);
    }

    public List<SheetPreview> changed() {
        return sheets.stream().filter(SheetPreview::isChanged).toList();
    }

    /** Sheets with marks set by hand that the run would give otherwise. */
    public List<SheetPreview> withDifferingHandMarks() {
        return sheets.stream().filter(sheet -> !sheet.differing().isEmpty()).toList();
    }
}
