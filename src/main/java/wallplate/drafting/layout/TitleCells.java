package wallplate.drafting.layout;

import java.util.List;
import wallplate.drafting.paper.Alignment;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Layer;
import wallplate.drafting.paper.Owner;
import wallplate.drafting.paper.TextMeasure;
import wallplate.drafting.paper.Typeface;
import wallplate.geometry.Point;

/** Letters the cells of a title block: a small name at the top of the cell, its value below. */
final class TitleCells {

    private static final double NAME_HEIGHT = 1.4;
    private static final double PADDING = 2;

    private final TextMeasure measure;
    private final List<Ink> inks;

    TitleCells(TextMeasure measure, List<Ink> inks) {
        this.measure = measure;
        this.inks = inks;
    }

    void cell(Box cell, String name, String value, double valueHeight) {
        Owner owner = Owner.of(Layer.FRAME);
        inks.add(Ink.Lettering.level(
                name,
                new Point(cell.left() + PADDING, cell.top() - NAME_HEIGHT - 1.3),
                NAME_HEIGHT,
                Alignment.START,
                Typeface.TEXT,
                owner));
        double y = cell.bottom() + Math.max(1.4, (cell.height() - NAME_HEIGHT - 1.3 - valueHeight) / 2);
        fitted(
                value,
                new Point(cell.left() + PADDING, y),
                valueHeight,
                cell.width() - 2 * PADDING,
                Typeface.LETTERING_STRONG);
    }

    /** A line of text, made smaller where it would not fit. */
    void fitted(String text, Point at, double height, double room, Typeface typeface) {
        double width = measure.widthMm(text, typeface, height);
        double fitting = width <= room ? height : height * room / width;
        inks.add(Ink.Lettering.level(text, at, fitting, Alignment.START, typeface, Owner.of(Layer.FRAME)));
    }
}
