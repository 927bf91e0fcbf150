package wallplate.drafting.layout;

import wallplate.geometry.Segment;
import wallplate.sheet.PrintedMarks;
import wallplate.task.SheetFormat;

/**
 * How a sheet is divided: frame, title block at the lower right, place of the reference bar at the lower left, where the
 * printed sheets have it, and the
 * zone above them for the drawing.
 *
 * <p>Margins after ISO 5457: 20 mm at the filing edge on the left, 10 mm at the others (as quoted in secondary sources;
 * the A3 drawing space of 390 x 277 mm agrees).
 */
record SheetPlan(Box sheet, Box frame, Box titleBlock, Segment bar, Box zone) {

    private static final double FILING_EDGE = 20;
    private static final double EDGE = 10;
    /** Clear paper between the frame and anything drawn inside it. */
    private static final double CLEAR = 5;
    /** Half of the height that the bar takes up with its ticks. */
    private static final double HALF_TICK = 3;

    static SheetPlan of(SheetFormat format) {
        Box sheet = new Box(0, 0, format.widthMm(), format.heightMm());
        Box frame = new Box(FILING_EDGE, EDGE, format.widthMm() - EDGE, format.heightMm() - EDGE);
        boolean large = format.widthMm() * format.heightMm() > 297 * 210 + 1;
        double width = large ? 140 : Math.min(118, frame.width() - 20);
        double height = large ? 36 : 31;
        Box titleBlock = new Box(frame.right() - width, frame.bottom(), frame.right(), frame.bottom() + height);
        Segment bar = PrintedMarks.of(format).barPlace();
        double floor = Math.max(titleBlock.top(), bar.start().y() + HALF_TICK) + CLEAR;
        Box zone = new Box(frame.left() + CLEAR, floor, frame.right() - CLEAR, frame.top() - CLEAR);
        return new SheetPlan(sheet, frame, titleBlock, bar, zone);
    }
}
