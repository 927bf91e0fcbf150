package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.List;
import wallplate.drafting.paper.Alignment;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Layer;
import wallplate.drafting.paper.Owner;
import wallplate.drafting.paper.Pen;
import wallplate.drafting.paper.TextMeasure;
import wallplate.drafting.paper.Typeface;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.solver.Caution;

/**
 * The title block of a sheet: the drawing's title, rows of small cells, and the caution at the foot.
 *
 * <p>As narrow as the reference bar beside it demands, and then higher: titles and the caution are broken into lines.
 */
final class TitleBlock {

    private static final double NAME_HEIGHT = 1.4;
    private static final double VALUE_HEIGHT = 2.5;
    private static final double CAUTION_HEIGHT = 1.8;
    private static final double CAUTION_LINE = 3.2;
    private static final double PADDING = 2;
    private static final double ROW = 9;
    /** Below this width a row holds two cells only. */
    private static final double NARROW = 90;

    private static final Owner OWNER = Owner.of(Layer.FRAME);

    private final String title;
    private final double cornerCut;
    private final double width;
    private final TextMeasure measure;
    private final List<String> titleLines;
    private final double titleHeight;
    private final List<List<Cell>> rows;
    private final List<String> cautionLines;

    /**
     * A small name with the value below it; an empty value is a place to write on.
     *
     * @param share of the row's width, against the other cells of the row
     */
    record Cell(String name, String value, int share) {

        Cell(String name, String value) {
            this(name, value, 1);
        }
    }

    TitleBlock(double width, TextMeasure measure, String title, List<List<Cell>> rows) {
        this(width, 0, measure, title, rows);
    }

    private TitleBlock(double width, double cornerCut, TextMeasure measure, String title, List<List<Cell>> rows) {
        this.title = title;
        this.cornerCut = cornerCut;
        this.width = width;
        this.measure = measure;
        TextLines text = new TextLines(measure);
        this.titleHeight = width < NARROW ? 3 : 3.5;
        this.titleLines = text.broken(title, Typeface.LETTERING_STRONG, titleHeight, width - 2 * PADDING);
        this.cautionLines = text.broken(
                Caution.TEXT, Typeface.LETTERING, CAUTION_HEIGHT, width - 2 * PADDING - cornerCut);
        this.rows = width < NARROW ? inPairs(rows) : rows;
    }

    /** The same without a square of its lower right corner, where a printed sheet has its mark. */
    TitleBlock withCornerCut(double cut) {
        return new TitleBlock(width, cut, measure, title, rows);
    }

    private static List<List<Cell>> inPairs(List<List<Cell>> rows) {
        List<List<Cell>> pairs = new ArrayList<>();
        for (List<Cell> row : rows) {
            for (int index = 0; index < row.size(); index += 2) {
                pairs.add(row.subList(index, Math.min(index + 2, row.size())));
            }
        }
        return pairs;
    }

    double height() {
        return headHeight() + rows.size() * ROW + footHeight();
    }

    private double headHeight() {
        return NAME_HEIGHT + 3.2 + titleLines.size() * (titleHeight + 2) + 0.6;
    }

    private double footHeight() {
        return Math.max(cornerCut, cautionLines.size() * CAUTION_LINE + 2.2);
    }

    void draw(Point lowerLeft, List<Ink> inks) {
        Box block = new Box(lowerLeft.x(), lowerLeft.y(), lowerLeft.x() + width, lowerLeft.y() + height());
        outline(block, inks);
        double y = block.top() - headHeight();
        name("Drawing", block.left(), block.top(), inks);
        for (int line = 0; line < titleLines.size(); line++) {
            double below = (titleLines.size() - 1 - line) * (titleHeight + 2);
            letter(titleLines.get(line), block.left(), y + 2 + below, titleHeight, Typeface.LETTERING_STRONG, inks);
        }
        for (List<Cell> row : rows) {
            rule(block, y, inks);
            row(row, new Box(block.left(), y - ROW, block.right(), y), inks);
            y -= ROW;
        }
        rule(block, y, inks);
        for (String line : cautionLines) {
            y -= CAUTION_LINE;
            letter(line, block.left(), y, CAUTION_HEIGHT, Typeface.LETTERING, inks);
        }
    }

    private void row(List<Cell> cells, Box row, List<Ink> inks) {
        double unit = row.width() / cells.stream().mapToInt(Cell::share).sum();
        double left = row.left();
        for (int column = 0; column < cells.size(); column++) {
            double cellWidth = unit * cells.get(column).share();
            if (column > 0) {
                inks.add(new Ink.Stroke(Segment.between(left, row.bottom(), left, row.top()), Pen.THIN, OWNER));
            }
            name(cells.get(column).name(), left, row.top(), inks);
            fitted(cells.get(column).value(), new Point(left + PADDING, row.bottom() + 1.8), cellWidth, inks);
            left += cellWidth;
        }
    }

    private static void name(String name, double left, double top, List<Ink> inks) {
        inks.add(Ink.Lettering.level(
                name,
                new Point(left + PADDING, top - NAME_HEIGHT - 1.2),
                NAME_HEIGHT,
                Alignment.START,
                Typeface.TEXT,
                OWNER));
    }

    /** A value that is too long for its cell is lettered smaller. */
    private void fitted(String value, Point at, double cellWidth, List<Ink> inks) {
        if (value.isEmpty()) {
            return;
        }
        double room = cellWidth - 2 * PADDING;
        double needed = measure.widthMm(value, Typeface.LETTERING_STRONG, VALUE_HEIGHT);
        double height = needed <= room ? VALUE_HEIGHT : VALUE_HEIGHT * room / needed;
        inks.add(Ink.Lettering.level(value, at, height, Alignment.START, Typeface.LETTERING_STRONG, OWNER));
    }

    private static void letter(
            String text, double left, double y, double height, Typeface typeface, List<Ink> inks) {
        inks.add(Ink.Lettering.level(
                text, new Point(left + PADDING, y), height, Alignment.START, typeface, OWNER));
    }

    private static void rule(Box block, double y, List<Ink> inks) {
        inks.add(new Ink.Stroke(Segment.between(block.left(), y, block.right(), y), Pen.THIN, OWNER));
    }

    private void outline(Box block, List<Ink> inks) {
        List<Point> corners = new ArrayList<>(List.of(
                new Point(block.left(), block.bottom()), new Point(block.right() - cornerCut, block.bottom())));
        if (cornerCut > 0) {
            corners.add(new Point(block.right() - cornerCut, block.bottom() + cornerCut));
            corners.add(new Point(block.right(), block.bottom() + cornerCut));
        }
        corners.add(new Point(block.right(), block.top()));
        corners.add(new Point(block.left(), block.top()));
        SheetFurniture.closed(corners, Pen.THICK, inks);
    }
}
