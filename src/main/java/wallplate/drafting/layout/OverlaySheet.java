package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.List;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Picture;
import wallplate.drafting.paper.Shade;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.LineRole;

/** The expected lines alone, without hatching, diagonals or sheet, for laying over a learner's drawing. */
public final class OverlaySheet {

    private OverlaySheet() {}

    /** One unit a millimetre, the heel point at the origin; the picture's size is that of its lines. */
    public static Picture inDetailAxes(ExpectedDrawing drawing) {
        List<Ink> inks = new ArrayList<>();
        List<Segment> places = new ArrayList<>();
        for (DrawnLine line : drawing.lines()) {
            if (line.role() != LineRole.HATCH) {
                inks.add(LineInk.of(line, line.segment(), Shade.FAINT));
                places.add(line.segment());
            }
        }
        Box bounds = Box.around(places);
        return picture(drawing, bounds.width(), bounds.height(), inks);
    }

    /** Over a picture with y down, in its pixels. */
    public static Picture overPicture(ExpectedDrawing drawing, PlaneMap toPicture, double widthPx, double heightPx) {
        List<Ink> inks = new ArrayList<>();
        for (DrawnLine line : drawing.lines()) {
            if (line.role() != LineRole.HATCH) {
                Segment place = toPicture.apply(line.segment());
                Segment upright = new Segment(upright(place.start(), heightPx), upright(place.end(), heightPx));
                inks.add(LineInk.of(line, upright, Shade.FAINT));
            }
        }
        return picture(drawing, widthPx, heightPx, inks);
    }

    /** Pictures here have y up; the writer turns it down again. */
    private static Point upright(Point pixel, double heightPx) {
        return new Point(pixel.x(), heightPx - pixel.y());
    }

    private static Picture picture(ExpectedDrawing drawing, double width, double height, List<Ink> inks) {
        return new Picture(
                "overlay-" + drawing.task().id(),
                width,
                height,
                "Expected lines",
                "The lines that the task asks for, laid over the drawing",
                inks);
    }
}
