package wallplate.drafting.codes;

import java.util.List;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Layer;
import wallplate.drafting.paper.Owner;
import wallplate.sheet.PrintedMarks.CornerMark;
import wallplate.sheet.PrintedMarks;

/**
 * The corner marks as filled squares: the first four of the ArUco dictionary of four by four cells, as OpenCV draws them
 * (predefined dictionary {@code DICT_4X4_50}); tests read them back with OpenCV.
 */
public final class CornerMarkInk {

    private static final int CELLS = 6;

    /** Black is {@code #}. */
    private static final List<String> PATTERNS = List.of(
            "###### #.#..# ##.#.# ###..# ###.## ######",
            "###### ###### #....# #.##.# #.#.## ######",
            "###### ###..# ###..# ###.## #..#.# ######",
            "###### #.##.# #.##.# ##.### ##..## ######");

    private CornerMarkInk() {}

    public static List<Ink> of(CornerMark mark) {
        String pattern = PATTERNS.get(mark.number());
        double half = PrintedMarks.MARK_SIZE / 2;
        Owner owner = new Owner(Layer.MARK, "", 0, "corner");
        double size = PrintedMarks.MARK_SIZE / CELLS;
        Cells cells = new Cells(mark.centre().x() - half, mark.centre().y() - half, size, owner);
        return cells.inked(CELLS, CELLS, (row, column) -> pattern.charAt(row * (CELLS + 1) + column) == '#');
    }
}
