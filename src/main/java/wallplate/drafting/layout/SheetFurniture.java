package wallplate.drafting.layout;

import java.util.List;
import wallplate.drafting.paper.Alignment;
import wallplate.drafting.paper.Decimals;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Layer;
import wallplate.drafting.paper.Owner;
import wallplate.drafting.paper.Pen;
import wallplate.drafting.paper.Typeface;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;

/** What stands on a sheet around the drawing: its frame and its reference bar. */
final class SheetFurniture {

    private SheetFurniture() {}

    static void outline(Box box, Pen pen, List<Ink> inks) {
        closed(
                List.of(
                        new Point(box.left(), box.bottom()),
                        new Point(box.right(), box.bottom()),
                        new Point(box.right(), box.top()),
                        new Point(box.left(), box.top())),
                pen,
                inks);
    }

    /** A line around the corners, back to the first. */
    static void closed(List<Point> corners, Pen pen, List<Ink> inks) {
        for (int corner = 0; corner < corners.size(); corner++) {
            Point next = corners.get((corner + 1) % corners.size());
            inks.add(new Ink.Stroke(new Segment(corners.get(corner), next), pen, Owner.of(Layer.FRAME)));
        }
    }

    /** The bar as a learner draws it, with its ticks and its length. */
    static void bar(Segment bar, List<Ink> inks) {
        inks.add(new Ink.Stroke(bar, Pen.MEDIUM, new Owner(Layer.REFERENCE_BAR, "", 0, "bar")));
        for (Point end : List.of(bar.start(), bar.end())) {
            Segment tick = Segment.between(
                    end.x(), end.y() - SheetPlan.HALF_TICK, end.x(), end.y() + SheetPlan.HALF_TICK);
            inks.add(new Ink.Stroke(tick, Pen.MEDIUM, new Owner(Layer.REFERENCE_BAR, "", 0, "tick")));
        }
        inks.add(Ink.Lettering.level(
                "reference bar " + Decimals.figure(bar.length()) + " mm",
                new Point(bar.midpoint().x(), bar.start().y() + 1.2),
                1.8,
                Alignment.MIDDLE,
                Typeface.LETTERING,
                Owner.of(Layer.REFERENCE_BAR)));
    }
}
