package wallplate.drafting.layout;

import java.util.List;
import wallplate.drafting.Caution;
import wallplate.drafting.DrawingOptions;
import wallplate.drafting.Figures;
import wallplate.drafting.paper.Alignment;
import wallplate.drafting.paper.Decimals;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Layer;
import wallplate.drafting.paper.Owner;
import wallplate.drafting.paper.Pen;
import wallplate.drafting.paper.TextMeasure;
import wallplate.drafting.paper.Typeface;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.task.DrawingTask;

/** Frame, title block and reference bar of a model answer. */
final class SheetFurniture {

    private final SheetPlan plan;
    private final TextMeasure measure;

    SheetFurniture(SheetPlan plan, TextMeasure measure) {
        this.plan = plan;
        this.measure = measure;
    }

    void modelAnswer(DrawingTask task, DrawingOptions options, List<Ink> inks) {
        Owner frame = Owner.of(Layer.FRAME);
        outline(plan.frame(), Pen.HEAVY, frame, inks);
        outline(plan.titleBlock(), Pen.THICK, frame, inks);
        titleBlock(task, options, inks);
        bar(task, inks);
    }

    private static void outline(Box box, Pen pen, Owner owner, List<Ink> inks) {
        inks.add(new Ink.Stroke(Segment.between(box.left(), box.bottom(), box.right(), box.bottom()), pen, owner));
        inks.add(new Ink.Stroke(Segment.between(box.right(), box.bottom(), box.right(), box.top()), pen, owner));
        inks.add(new Ink.Stroke(Segment.between(box.right(), box.top(), box.left(), box.top()), pen, owner));
        inks.add(new Ink.Stroke(Segment.between(box.left(), box.top(), box.left(), box.bottom()), pen, owner));
    }

    private void titleBlock(DrawingTask task, DrawingOptions options, List<Ink> inks) {
        Box block = plan.titleBlock();
        double cautionTop = block.bottom() + 5.5;
        double rowTop = cautionTop + 9;
        rule(block, cautionTop, inks);
        rule(block, rowTop, inks);
        TitleCells cells = new TitleCells(measure, inks);
        cells.cell(new Box(block.left(), rowTop, block.right(), block.top()), "Drawing", task.title(), 3.5);
        double third = block.width() / 4;
        String[] names = {"Kind", "Scale", "Sheet", "Sizes"};
        String sizes = options.figures() == Figures.REAL ? "real mm" : "mm on paper";
        String[] values = {"Model answer", task.scale().toString(), sheetName(task), sizes};
        for (int column = 0; column < names.length; column++) {
            double left = block.left() + column * third;
            if (column > 0) {
                inks.add(new Ink.Stroke(
                        Segment.between(left, cautionTop, left, rowTop), Pen.THIN, Owner.of(Layer.FRAME)));
            }
            cells.cell(new Box(left, cautionTop, left + third, rowTop), names[column], values[column], 2.5);
        }
        cells.fitted(
                Caution.SENTENCE, new Point(block.left() + 2, block.bottom() + 1.9), 1.8, block.width() - 4, Typeface.LETTERING);
    }

    private static String sheetName(DrawingTask task) {
        return task.sheet().name() + (task.sheet().landscape() ? " landscape" : " portrait");
    }

    private static void rule(Box block, double y, List<Ink> inks) {
        inks.add(new Ink.Stroke(
                Segment.between(block.left(), y, block.right(), y), Pen.THIN, Owner.of(Layer.FRAME)));
    }

    private void bar(DrawingTask task, List<Ink> inks) {
        Owner owner = Owner.of(Layer.REFERENCE_BAR);
        Segment bar = plan.bar();
        inks.add(new Ink.Stroke(bar, Pen.MEDIUM, new Owner(Layer.REFERENCE_BAR, "", 0, "bar")));
        for (Point end : List.of(bar.start(), bar.end())) {
            inks.add(new Ink.Stroke(
                    Segment.between(end.x(), end.y() - 3, end.x(), end.y() + 3),
                    Pen.MEDIUM,
                    new Owner(Layer.REFERENCE_BAR, "", 0, "tick")));
        }
        inks.add(Ink.Lettering.level(
                "reference bar " + Decimals.figure(task.sheet().referenceBarMm()) + " mm",
                new Point(bar.midpoint().x(), bar.start().y() + 1.2),
                1.8,
                Alignment.MIDDLE,
                Typeface.LETTERING,
                owner));
    }
}
