package wallplate.drafting.layout;

import wallplate.geometry.Segment;
import wallplate.sheet.PrintedMarks;
import wallplate.task.SheetFormat;

/**
 * How a sheet is divided: frame, title block at the lower right, reference bar at the lower left where the printed
 * sheets have it, and the zone above them for the drawing.
 *
 * <p>Margins after ISO 5457: 20 mm at the filing edge on the left, 10 mm at the others (as quoted in secondary sources;
 * the A3 drawing space of 390 x 277 mm agrees).
 */
record SheetPlan(Box sheet, Box frame, Box titleBlock, Segment bar, Box zone) {

    private static final double FILING_EDGE = 20;
    private static final double EDGE = 10;
    /** Clear paper between the frame and anything drawn inside it. */
    static final double CLEAR = 5;
    /** Half of the height that the bar takes up with its ticks. */
    static final double HALF_TICK = 3;
    /** From the bar's end to the title block: the bar must stand alone. */
    private static final double BESIDE_BAR = 8;

    private static final double WIDEST_BLOCK = 118;
    private static final double WIDEST_BLOCK_LARGE = 140;
    private static final double NARROWEST_BLOCK = 55;

    static Box frame(SheetFormat format) {
        return new Box(FILING_EDGE, EDGE, format.widthMm() - EDGE, format.heightMm() - EDGE);
    }

    /** As wide as the bar beside it leaves room for. */
    static double titleBlockWidth(SheetFormat format) {
        boolean large = Math.min(format.widthMm(), format.heightMm()) > 210;
        double barEnd = PrintedMarks.of(format).barPlace().end().x();
        double beside = frame(format).right() - barEnd - BESIDE_BAR;
        return Math.max(NARROWEST_BLOCK, Math.min(large ? WIDEST_BLOCK_LARGE : WIDEST_BLOCK, beside));
    }

    static SheetPlan of(SheetFormat format, double titleBlockHeight) {
        Box sheet = new Box(0, 0, format.widthMm(), format.heightMm());
        Box frame = frame(format);
        double left = frame.right() - titleBlockWidth(format);
        Box titleBlock = new Box(left, frame.bottom(), frame.right(), frame.bottom() + titleBlockHeight);
        Segment bar = PrintedMarks.of(format).barPlace();
        double floor = Math.max(titleBlock.top(), bar.start().y() + HALF_TICK) + CLEAR;
        Box zone = new Box(frame.left() + CLEAR, floor, frame.right() - CLEAR, frame.top() - CLEAR);
        return new SheetPlan(sheet, frame, titleBlock, bar, zone);
    }

    /** The paper that the bar needs for itself, with its lettering. */
    Box barRoom() {
        return new Box(bar.start().x(), bar.start().y() - HALF_TICK, bar.end().x(), bar.start().y() + HALF_TICK).grown(3);
    }
}
