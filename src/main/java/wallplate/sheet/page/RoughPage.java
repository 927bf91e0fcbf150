package wallplate.sheet.page;

import java.util.List;
import wallplate.geometry.Line;

/**
 * A page as it was put on the scanner or seen by the camera, flat but not yet level, upright or calibrated.
 *
 * @param map from rough millimetres, as far as the paper's size or the stated resolution gives them, to pixels; the
 *     origin is the lower left corner as the picture shows it
 * @param paper the paper's edges that are in the picture, in rough millimetres, with the paper on their left
 * @param kind how the page was captured
 * @param scale what the rough millimetres rest on
 */
public record RoughPage(
        PageMap map, double widthMm, double heightMm, List<Line> paper, Kind kind, Scale scale) {

    public RoughPage {
        paper = List.copyOf(paper);
    }

    /** How a page was captured. */
    public enum Kind {
        SCAN,
        PHOTOGRAPH
    }

    /** What a rough page's millimetres rest on. */
    public enum Scale {
        /** Printed marks of known places. */
        MARKS,
        /** All four edges of a sheet of known size. */
        EDGES,
        /** The resolution that the file states, for both directions alike. */
        STATED_RESOLUTION,
        /** Nothing but that the sheet fills the picture. */
        FILLED_PICTURE
    }
}
