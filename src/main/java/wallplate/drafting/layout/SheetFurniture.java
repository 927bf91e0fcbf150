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

    static void frame(Box box, List<Ink> inks) {
        Owner owner = Owner.of(Layer.FRAME);
        inks.add(new Ink.Stroke(Segment.between(box.left(), box.bottom(), box.right(), box.bottom()), Pen.HEAVY, owner));
        inks.add(new Ink.Stroke(Segment.between(box.right(), box.bottom(), box.right(), box.top()), Pen.HEAVY, owner));
        inks.add(new Ink.Stroke(Segment.between(box.right(), box.top(), box.left(), box.top()), Pen.HEAVY, owner));
        inks.add(new Ink.Stroke(Segment.between(box.left(), box.top(), box.left(), box.bottom()), Pen.HEAVY, owner));
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
