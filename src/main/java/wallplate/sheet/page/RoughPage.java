package wallplate.sheet.page;

import java.util.List;
import wallplate.geometry.Line;
import wallplate.task.SheetFormat;

/**
 * A page as it was put on the scanner or seen by the camera, flat but not yet level, upright or calibrated.
 *
 * @param map from rough millimetres, as far as the paper's size or the stated resolution gives them, to pixels; the
 *     origin is the lower left corner as the picture shows it
 * @param paper the paper's edges that are in the picture, in rough millimetres, with the paper on their left
 * @param kind how the page was captured
 * @param scale what the rough millimetres rest on
 * @param otherMm millimetres to a rough one by the other of two witnesses, the paper's edges and the resolution that the file
 *     states: by that on which the rough ones do not rest; 1 where one of the two is missing
 */
public record RoughPage(
        PageMap map, double widthMm, double heightMm, List<Line> paper, Kind kind, Scale scale, double otherMm) {

    /** A scanner cuts off up to half a centimetre all round; where less than this share is left, a part is missing. */
    public static final double WHOLE_SHARE = 0.93;

    /** By what share a scanner's stated resolution may be off; where it differs by more, something else is meant. */
    static final double STATED_WRONG = 0.02;

    private static final double LEAST_APART = 50;

    /** Opposite edges run against one another; neighbours are square only nearly. */
    private static final double MOST_DOT_OF_OPPOSITE = -0.9;

    public RoughPage {
        paper = List.copyOf(paper);
    }

    RoughPage(PageMap map, double widthMm, double heightMm, List<Line> paper, Kind kind, Scale scale) {
        this(map, widthMm, heightMm, paper, kind, scale, 1);
    }

    /** Whether the paper's edges and the resolution that the file states give the sheet two sizes. */
    public boolean isContradicted() {
        return Math.abs(otherMm - 1) > STATED_WRONG;
    }

    /** Whether the rough millimetres are true ones, from something of known size. */
    public boolean isTrueToSize() {
        return scale == Scale.EDGES || scale == Scale.MARKS || scale == Scale.OPPOSITE_EDGES;
    }

    /**
     * Whether the picture clearly shows less than a sheet of the format: by the resolution that the file states, or by
     * proportions that are not the sheet's where nothing else tells its size.
     */
    public boolean isPartOf(SheetFormat format) {
        double longer = Math.max(widthMm, heightMm) / Math.max(format.widthMm(), format.heightMm());
        double shorter = Math.min(widthMm, heightMm) / Math.min(format.widthMm(), format.heightMm());
        return scale == Scale.FILLED_PICTURE
                ? Math.min(longer, shorter) < WHOLE_SHARE * Math.max(longer, shorter)
                : Math.min(longer, shorter) < WHOLE_SHARE;
    }

    /**
     * Whether a sheet of the given format lies with its longer side along the page's x axis: by the page's proportions, and
     * on a page that is cut off by which side of the sheet lies between its two edges.
     */
    public boolean isLandscape(SheetFormat format) {
        double middle = (format.widthMm() + format.heightMm()) / 2;
        if (scale == Scale.OPPOSITE_EDGES) {
            for (Line first : paper) {
                for (Line second : paper) {
                    double apart = Math.abs(first.distanceTo(second.origin()));
                    boolean areOpposite = first.direction().dot(second.direction()) < MOST_DOT_OF_OPPOSITE;
                    if (areOpposite && apart > LEAST_APART) {
                        boolean upright = Math.abs(first.direction().y()) > Math.abs(first.direction().x());
                        return upright == apart > middle;
                    }
                }
            }
        }
        return widthMm >= heightMm;
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
        /** Two opposite edges of a sheet of known size, for both directions alike; the others are cut off. */
        OPPOSITE_EDGES,
        /** The resolution that the file states, for both directions alike. */
        STATED_RESOLUTION,
        /** Nothing but that the sheet fills the picture. */
        FILLED_PICTURE
    }
}
