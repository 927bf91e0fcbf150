package wallplate.sheet;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.task.SheetFormat;

/**
 * Where the project's own printed drawing sheets carry their corner marks, their code and the place for the bar.
 *
 * <p>Places are millimetres from the sheet's lower left corner, x right and y up, with the sheet upright. The marks are
 * ArUco marks: the sheet is found by them, put upright by their numbers and rectified by their places. Printed frames
 * and texts keep clear of a mark's and of the code's quiet zone.
 *
 * @param marks lower left, lower right, upper right, upper left, with the numbers 0 to 3
 * @param code where the code with the sheet's owner is
 * @param barPlace where the learner is invited to draw the reference bar
 */
public record PrintedMarks(List<CornerMark> marks, CodePlace code, Segment barPlace) {

    /** The ArUco dictionary of the marks, as OpenCV names it: four by four cells, fifty marks. */
    public static final String DICTIONARY = "DICT_4X4_50";

    /** The side of a mark's black square. */
    public static final double MARK_SIZE = 8;

    /** The white that a mark needs around its black square: one and a half of its own cells. */
    public static final double MARK_QUIET_ZONE = 2;

    /** From the paper's edges to a mark's centre; a home printer leaves about 5 mm of an edge white. */
    public static final double MARK_INSET = 11;

    /** The side of the QR code, without its quiet zone. */
    public static final double CODE_SIZE = 16;

    /** The white that the code needs around it: four cells of a code with 29 cells a side. */
    public static final double CODE_QUIET_ZONE = 2.5;

    private static final double CODE_FROM_RIGHT = 30;
    private static final double CODE_FROM_TOP = 17;
    private static final double BAR_FROM_LEFT = 30;
    private static final double BAR_HEIGHT = 25;

    public PrintedMarks {
        marks = List.copyOf(marks);
    }

    /**
     * One corner mark.
     *
     * @param number its number in the dictionary
     * @param centre the centre of its black square
     */
    public record CornerMark(int number, Point centre) {

        /** The black square's corners in the order of the dictionary: upper left, upper right, lower right, lower left. */
        public List<Point> corners() {
            double half = MARK_SIZE / 2;
            return List.of(
                    new Point(centre.x() - half, centre.y() + half),
                    new Point(centre.x() + half, centre.y() + half),
                    new Point(centre.x() + half, centre.y() - half),
                    new Point(centre.x() - half, centre.y() - half));
        }
    }

    /** Where the code stands: its centre and the side of its square. */
    public record CodePlace(Point centre, double size) {}

    /** The marks of a sheet of the given size. */
    public static PrintedMarks of(SheetFormat format) {
        double right = format.widthMm() - MARK_INSET;
        double top = format.heightMm() - MARK_INSET;
        List<CornerMark> marks = List.of(
                new CornerMark(0, new Point(MARK_INSET, MARK_INSET)),
                new CornerMark(1, new Point(right, MARK_INSET)),
                new CornerMark(2, new Point(right, top)),
                new CornerMark(3, new Point(MARK_INSET, top)));
        Point code = new Point(format.widthMm() - CODE_FROM_RIGHT, format.heightMm() - CODE_FROM_TOP);
        Segment bar = Segment.between(
                BAR_FROM_LEFT, BAR_HEIGHT, BAR_FROM_LEFT + format.referenceBarMm(), BAR_HEIGHT);
        return new PrintedMarks(marks, new CodePlace(code, CODE_SIZE), bar);
    }
}
