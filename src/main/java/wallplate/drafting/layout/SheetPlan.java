package wallplate.drafting.layout;

import wallplate.task.SheetFormat;

/**
 * How a sheet is divided: frame, title block at the lower right, place of the reference bar at the lower left, and the
 * zone above them for the drawing.
 *
 * <p>Margins after ISO 5457: 20 mm at the filing edge on the left, 10 mm at the others (as quoted in secondary sources;
 * the A3 drawing space of 390 x 277 mm agrees).
 */
record SheetPlan(Box sheet, Box frame, Box titleBlock, Box bar, Box zone) {

    private static final double FILING_EDGE = 20;
    private static final double EDGE = 10;
    /** Clear paper between the frame and anything drawn inside it. */
    private static final double CLEAR = 5;
    /** From the lower frame line to the bar: well inside the lowest 45 mm, clear of the lower marks. */
    private static final double BAR_ABOVE_FRAME = 14;

    static SheetPlan of(SheetFormat format) {
        Box sheet = new Box(0, 0, format.widthMm(), format.heightMm());
        Box frame = new Box(FILING_EDGE, EDGE, format.widthMm() - EDGE, format.heightMm() - EDGE);
        boolean large = format.widthMm() * format.heightMm() > 297 * 210 + 1;
        double width = large ? 140 : Math.min(118, frame.width() - 20);
        double height = large ? 36 : 31;
        Box titleBlock = new Box(frame.right() - width, frame.bottom(), frame.right(), frame.bottom() + height);
        Box bar = barPlace(frame, titleBlock, format.referenceBarMm());
        double floor = Math.max(titleBlock.top(), bar.top()) + CLEAR;
        Box zone = new Box(frame.left() + CLEAR, floor, frame.right() - CLEAR, frame.top() - CLEAR);
        return new SheetPlan(sheet, frame, titleBlock, bar, zone);
    }

    /** Left of the title block where it fits there, else above it. */
    private static Box barPlace(Box frame, Box titleBlock, double lengthMm) {
        double left = frame.left() + 12;
        boolean beside = left + lengthMm + 8 <= titleBlock.left();
        double y = beside ? frame.bottom() + BAR_ABOVE_FRAME : titleBlock.top() + 9;
        return new Box(left, y - 3, left + lengthMm, y + 3);
    }
}
