package wallplate.measure;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import wallplate.stroke.Edge;

/** Measures the rows of boxes: the supports of the covering and the branders of the ceiling. */
final class RowKeys {

    private static final String OTHER_ROW = "the lines in the row could be read as another row of boxes";

    private static final String IN_A_GAP = "there is ink in the row where another box would stand, but no clear box";

    private static final String FIRST_UNLIKE =
            "the first box is not as wide as the others, so another line may have been taken for one of its sides";

    private static final double CLEAR_OF_WALL_MM = 0.6;

    /** The covering's supports may stand a little beyond where the rafter was seen to begin. */
    private static final double BEYOND_RAFTER_MM = 2;

    private final Arrangement drawing;
    private final Findings findings;
    private final ChoiceLog log;

    RowKeys(Arrangement drawing, Findings findings, ChoiceLog log) {
        this.drawing = drawing;
        this.findings = findings;
        this.log = log;
    }

    /** The supports between the rafter's top and the covering's underside; the boxes that were found. */
    List<BoxRow.Box> supports() {
        if (drawing.roof().rafterTop().isEmpty() || drawing.roof().coveringBottom().isEmpty()) {
            return List.of();
        }
        Edge lower = drawing.roof().rafterTop().get();
        Edge upper = drawing.roof().coveringBottom().get();
        double from = Math.min(lower.from(), outerEnd(lower)) - BEYOND_RAFTER_MM;
        double to = drawing.shortOfBreak(lower);
        DrawingView view = drawing.view();
        BoxRow row = BoxRow.read(view, drawing.expectation(), "support", lower, upper, from, to, view.squareToSlope(),
                Stream.of(drawing.eaves().cut(), drawing.eaves().fasciaOuter())
                        .flatMap(Optional::stream).map(Edge::line).toList(),
                log);
        boxes("support", row, lower, upper, from, to);
        if (!row.boxes().isEmpty()) {
            BoxRow.Box first = row.boxes().get(0);
            double depth = lower.distanceTo(upper.within(
                    upper.line().positionOf(first.low().middle()), upper.line().positionOf(first.high().middle())),
                    view.slope());
            findings.between("support.depth", depth, lower, upper);
        } else if (!findings.isUncertain("support.count")) {
            findings.absent("support.depth");
        }
        return row.boxes();
    }

    /** Where the plumb cut meets the rafter's top, which may have been found only from further in. */
    private double outerEnd(Edge rafterTop) {
        return drawing.eaves().cut()
                .map(cut -> rafterTop.line().positionOf(Level.crossing(cut, rafterTop)))
                .orElse(rafterTop.from());
    }

    /** The branders between the ceiling and the line above it; how many there are. */
    int branders(Edge lower, Edge upper) {
        double from = drawing.wall().inner()
                        .map(edge -> lower.line().positionOf(Level.crossing(edge, lower)))
                        .orElse(lower.from())
                + CLEAR_OF_WALL_MM;
        double to = drawing.shortOfBreak(lower);
        BoxRow row = BoxRow.read(
                drawing.view(), drawing.expectation(), "brander", lower, upper, from, to, Level.UP, List.of(), log);
        boxes("brander", row, lower, upper, from, to);
        return row.boxes().size();
    }

    private void boxes(String part, BoxRow row, Edge lower, Edge upper, double from, double to) {
        List<BoxRow.Box> boxes = row.boxes();
        if (boxes.isEmpty() && !drawing.vacancy().ofRow(lower, upper, from, to)) {
            findings.uncertain(Vacancy.holdsInk("the row"),
                    part + ".count", part + ".width", part + ".depth", part + ".spacing", part + ".crossed");
            return;
        }
        if (row.odds().count() < Choice.SURE) {
            List<Double> counts = Stream.concat(Stream.of(boxes.size()), row.otherCount().stream())
                    .distinct()
                    .map(Integer::doubleValue)
                    .toList();
            findings.readings(part + ".count", OTHER_ROW, counts);
        } else {
            findings.count(part + ".count", boxes.size());
        }
        if (boxes.isEmpty()) {
            findings.absent(part + ".width", part + ".spacing", part + ".crossed");
            return;
        }
        BoxRow.Box first = boxes.get(0);
        findings.between(part + ".width", first.width(), first.low(), first.high());
        spacing(part, boxes);
        if (row.odds().width() < Choice.SURE) {
            findings.leaveOpen(OTHER_ROW, part + ".width");
        }
        if (row.odds().spacing() < Choice.SURE) {
            findings.leaveOpen(OTHER_ROW, part + ".spacing");
        }
        if (row.isGapInked()) {
            findings.leaveOpen(IN_A_GAP, part + ".count", part + ".spacing");
        }
        if (row.isFirstUnlike()) {
            findings.leaveOpen(FIRST_UNLIKE, part + ".width");
        }
        Diagonals.put(findings, part + ".crossed", crossedShare(boxes, lower, upper));
    }

    /** The mean from the first to the last centre. */
    private void spacing(String part, List<BoxRow.Box> boxes) {
        if (boxes.size() < 2) {
            findings.absent(part + ".spacing");
            return;
        }
        int gaps = boxes.size() - 1;
        BoxRow.Box first = boxes.get(0);
        BoxRow.Box last = boxes.get(gaps);
        double sigma = Math.hypot(first.low().offsetSigmaMm(), last.low().offsetSigmaMm()) / gaps;
        findings.length(part + ".spacing", (last.centre() - first.centre()) / gaps, sigma, boxes.stream()
                .flatMap(box -> Stream.of(box.low(), box.high()))
                .toArray(Edge[]::new));
    }

    /** The median over the boxes: one box in which lettering lies decides nothing. */
    private OptionalDouble crossedShare(List<BoxRow.Box> boxes, Edge lower, Edge upper) {
        Diagonals diagonals = new Diagonals(drawing.view());
        double[] shares = boxes.stream()
                .map(box -> diagonals.share(box.low(), box.high(), lower, upper))
                .flatMapToDouble(OptionalDouble::stream)
                .sorted()
                .toArray();
        return shares.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(shares[shares.length / 2]);
    }
}
