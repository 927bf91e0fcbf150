package wallplate.samples;

import java.util.ArrayList;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.samples.PlannedLine.Weight;

/**
 * The section through the eaves, or through a lean-to roof from its eaves on, as straight lines, straight from the description of the detail: origin at the heel
 * point, x towards the inside of the building, y up, millimetres on paper.
 */
final class EavesSection {

    private final Intention drawn;
    private final Chance chance;
    private final List<PlannedLine> lines = new ArrayList<>();
    private final double slope;
    private final double cosine;
    private final double sine;
    private final double wallOuter;
    private final double wallInner;
    private final double cut;
    private final double breakAt;
    private final double wallBottom;

    EavesSection(Intention drawn, Chance chance) {
        this.drawn = drawn;
        this.chance = chance;
        double pitch = Math.toRadians(drawn.pitchDegrees());
        this.slope = Math.tan(pitch);
        this.cosine = Math.cos(pitch);
        this.sine = Math.sin(pitch);
        this.wallOuter = -drawn.size("set-in");
        this.wallInner = wallOuter + drawn.size("wall.thickness");
        this.cut = wallOuter - drawn.size("rafter.overhang");
        this.breakAt = drawn.task().isLeanTo()
                ? wallInner + drawn.size("high-wall.clear-span") + drawn.size("high-wall.thickness")
                : wallOuter + drawn.size("inside");
        this.wallBottom = -drawn.size("wall-plate.depth") - chance.between(16, 24);
    }

    List<PlannedLine> lines() {
        rafterAndCovering();
        tieBeam();
        plateAndWall();
        beamFilling();
        supports();
        fasciaAndGutter();
        bargeBoard();
        ceiling();
        posts();
        if (drawn.task().isLeanTo()) {
            highEnd();
        } else {
            breakLine();
        }
        return List.copyOf(lines);
    }

    /** Height at x of the parallel that lies the given distance above the rafter's underside, square to the slope. */
    private double slopeAt(double x, double aboveUnderside) {
        return x * slope + (drawn.size("rafter.heel-offset") + aboveUnderside) / cosine;
    }

    private double rafterDepth() {
        return drawn.size("rafter.depth");
    }

    private double coveringUnderside() {
        return rafterDepth() + drawn.size("support.depth");
    }

    private double coveringTop() {
        return coveringUnderside() + drawn.size("covering.thickness");
    }

    private Point toe() {
        return new Point(cut, slopeAt(cut, rafterDepth()));
    }

    /** The point that lies along the slope from the toe and square above the rafter's top. */
    private Point fromToe(double alongSlope, double aboveTop) {
        Point toe = toe();
        return new Point(
                toe.x() + alongSlope * cosine - aboveTop * sine, toe.y() + alongSlope * sine + aboveTop * cosine);
    }

    private void rafterAndCovering() {
        add("rafter.bottom", cut, slopeAt(cut, 0), breakAt, slopeAt(breakAt, 0), Weight.OUTLINE);
        add("rafter.top", cut, toe().y(), breakAt, slopeAt(breakAt, rafterDepth()), Weight.OUTLINE);
        double projection = -drawn.size("covering.projection");
        Point low = fromToe(projection, drawn.size("support.depth"));
        Point high = fromToe(projection, drawn.size("support.depth") + drawn.size("covering.thickness"));
        add("covering.bottom", low.x(), low.y(), breakAt, slopeAt(breakAt, coveringUnderside()), Weight.OUTLINE);
        add("covering.top", high.x(), high.y(), breakAt, slopeAt(breakAt, coveringTop()), Weight.OUTLINE);
        add("covering.end", low.x(), low.y(), high.x(), high.y(), Weight.OUTLINE);
    }

    private void tieBeam() {
        if (!drawn.draws("tie-beam")) {
            return;
        }
        double depth = drawn.size("tie-beam.depth");
        double start = (depth - slopeAt(0, 0)) / slope;
        add("tie-beam.bottom", 0, 0, breakAt, 0, Weight.OUTLINE);
        add("tie-beam.top", Math.max(start, wallOuter), depth, breakAt, depth, Weight.OUTLINE);
    }

    private void plateAndWall() {
        double width = drawn.size("wall-plate.width");
        double depth = drawn.size("wall-plate.depth");
        add("wall-plate.outer", 0, -depth, 0, 0, Weight.OUTLINE);
        add("wall-plate.inner", width, -depth, width, 0, Weight.OUTLINE);
        add("wall-plate.top", 0, 0, width, 0, Weight.OUTLINE);
        if (drawn.crosses("wall-plate")) {
            add("wall-plate.cross1", 0, 0, width, -depth, Weight.THIN);
            add("wall-plate.cross2", 0, -depth, width, 0, Weight.THIN);
        }
        double topFrom = Math.max(wallOuter, Math.min(0, (-depth - slopeAt(0, 0)) / slope));
        double faceTop = drawsBeamFilling() ? slopeAt(wallOuter, coveringUnderside()) : -depth;
        add("wall.outer", wallOuter, wallBottom, wallOuter, faceTop, Weight.OUTLINE);
        add("wall.inner", wallInner, wallBottom, wallInner, -depth, Weight.OUTLINE);
        add("wall.top", topFrom, -depth, wallInner, -depth, Weight.OUTLINE);
        add("wall.break", wallOuter - 2.2, wallBottom, wallInner + 2.2, wallBottom, Weight.THIN);
        if (drawn.hatches("wall")) {
            hatch("wall.hatch", wallFace(depth), chance.between(1.8, 3.6));
        }
    }

    private List<Point> wallFace(double plateDepth) {
        double outerTop = Math.min(-plateDepth, slopeAt(wallOuter, 0));
        double meeting = Math.max(wallOuter, Math.min(wallInner, (-plateDepth - slopeAt(0, 0)) / slope));
        return List.of(
                new Point(wallOuter, wallBottom), new Point(wallInner, wallBottom), new Point(wallInner, -plateDepth),
                new Point(meeting, -plateDepth), new Point(wallOuter, outerTop));
    }

    private boolean drawsBeamFilling() {
        return drawn.size("set-in") >= 1.5 && drawn.draws("beam-filling");
    }

    private void beamFilling() {
        if (!drawsBeamFilling()) {
            return;
        }
        add("beam-filling.inner", 0, slopeAt(0, rafterDepth()), 0, slopeAt(0, coveringUnderside()), Weight.OUTLINE);
        if (drawn.hatches("beam-filling")) {
            List<Point> filling = List.of(
                    new Point(wallOuter, slopeAt(wallOuter, rafterDepth())), new Point(0, slopeAt(0, rafterDepth())),
                    new Point(0, slopeAt(0, coveringUnderside())),
                    new Point(wallOuter, slopeAt(wallOuter, coveringUnderside())));
            hatch("beam-filling.hatch", filling, chance.between(1.1, 1.9));
        }
    }

    private void hatch(String name, List<Point> outline, double spacing) {
        List<PlannedLine> strokes = Hatching.over(outline, 45 + chance.error(1.5), spacing, chance);
        for (int number = 0; number < strokes.size(); number++) {
            PlannedLine stroke = strokes.get(number);
            lines.add(new PlannedLine(number == 0 ? name : "", stroke.from(), stroke.to(), Weight.THIN));
        }
    }

    private void supports() {
        double width = drawn.size("support.width");
        double depth = drawn.size("support.depth");
        double topAtBreak = (breakAt - toe().x()) / cosine - depth * slope;
        int most = drawn.draws("supports-but-the-first") ? 60 : 1;
        for (int number = 0; number < most; number++) {
            double low = number * drawn.size("support.spacing") + (number == 0 ? 0 : chance.error(0.08));
            if (low + width > topAtBreak - 0.8) {
                return;
            }
            double high = low + width + (number == 0 ? 0 : chance.error(0.1));
            String part = "support" + number;
            box(part, fromToe(low, 0), fromToe(low, depth), fromToe(high, 0), fromToe(high, depth), "support");
        }
    }

    /** The two sides and the diagonals of a timber cut across the grain between two lines that are there already. */
    private void box(String part, Point lowFoot, Point lowHead, Point highFoot, Point highHead, String kind) {
        add(part + ".low", lowFoot.x(), lowFoot.y(), lowHead.x(), lowHead.y(), Weight.OUTLINE);
        add(part + ".high", highFoot.x(), highFoot.y(), highHead.x(), highHead.y(), Weight.OUTLINE);
        if (drawn.crosses(kind)) {
            add(part + ".cross1", lowFoot.x(), lowFoot.y(), highHead.x(), highHead.y(), Weight.THIN);
            add(part + ".cross2", lowHead.x(), lowHead.y(), highFoot.x(), highFoot.y(), Weight.THIN);
        }
    }

    private void fasciaAndGutter() {
        double outer = cut;
        double fasciaTop = slopeAt(cut, coveringUnderside());
        double fasciaDepth = drawn.has("fascia.depth") ? drawn.size("fascia.depth") : 10;
        if (drawn.draws("fascia")) {
            outer = cut - drawn.size("fascia.thickness");
            fasciaTop = slopeAt(outer, coveringUnderside()) - (chance.happens(0.6) ? 0 : chance.between(0, 1.5));
            double bottom = fasciaTop - fasciaDepth;
            add("fascia.outer", outer, bottom, outer, fasciaTop, Weight.OUTLINE);
            add("fascia.inner", cut, Math.min(bottom, slopeAt(cut, 0)), cut, fasciaTop, Weight.OUTLINE);
            add("fascia.top", outer, fasciaTop, cut, fasciaTop, Weight.OUTLINE);
            add("fascia.bottom", outer, bottom, cut, bottom, Weight.OUTLINE);
        } else {
            add("rafter.cut", cut, slopeAt(cut, 0), cut, toe().y(), Weight.OUTLINE);
        }
        if (drawn.draws("gutter")) {
            gutter(outer, fasciaTop - fasciaDepth * chance.between(0.14, 0.3));
        }
    }

    private void gutter(double against, double rim) {
        double outer = against - drawn.size("gutter.width");
        double bottom = rim - drawn.size("gutter.depth");
        add("gutter.outer", outer, bottom, outer, rim, Weight.OUTLINE);
        boolean ownUpright = chance.happens(0.3);
        double inner = ownUpright ? against - chance.between(0.15, 0.25) : against;
        add("gutter.bottom", outer, bottom, inner, bottom, Weight.OUTLINE);
        if (ownUpright) {
            add("gutter.inner", inner, bottom, inner, rim, Weight.OUTLINE);
        }
    }

    private void bargeBoard() {
        if (!drawn.draws("barge-board")) {
            return;
        }
        double fasciaFace = cut - (drawn.draws("fascia") ? drawn.size("fascia.thickness") : 0);
        double beyond = drawn.draws("gutter") ? fasciaFace - drawn.size("gutter.width") : fasciaFace;
        double end = beyond - drawn.size("barge-board.clearance");
        double top = slopeAt(end, coveringTop());
        double bottom = top - drawn.size("barge-board.depth");
        add("barge-board.end", end, bottom, end, top, Weight.OUTLINE);
        add("barge-board.bottom", end, bottom, wallOuter, bottom + (wallOuter - end) * slope, Weight.OUTLINE);
        Point coveringStart = fromToe(
                -drawn.size("covering.projection"), drawn.size("support.depth") + drawn.size("covering.thickness"));
        if (coveringStart.x() - end > 0.8) {
            add("barge-board.top", end, top, coveringStart.x(), coveringStart.y(), Weight.OUTLINE);
        }
    }

    private void ceiling() {
        if (!drawn.draws("ceiling")) {
            return;
        }
        double top = -drawn.size("brander.depth");
        double board = drawn.size("ceiling.board");
        add("ceiling.top", wallInner, top, breakAt, top, board < 0.7 ? Weight.HEAVY : Weight.OUTLINE);
        if (board >= 0.7) {
            add("ceiling.bottom", wallInner, top - board, breakAt, top - board, Weight.OUTLINE);
        }
        if (drawn.draws("brander")) {
            branders(top);
        }
    }

    private void branders(double ceilingTop) {
        double width = drawn.size("brander.width");
        double first = wallInner + chance.between(0.5, 12);
        for (int number = 0; number < 60; number++) {
            double low = first + number * drawn.size("brander.spacing") + (number == 0 ? 0 : chance.error(0.08));
            double high = low + width + (number == 0 ? 0 : chance.error(0.1));
            if (high > breakAt - 0.8) {
                return;
            }
            String part = "brander" + number;
            box(part, new Point(low, ceilingTop), new Point(low, 0), new Point(high, ceilingTop), new Point(high, 0), "brander");
            if (!drawn.draws("tie-beam")) {
                add(part + ".top", low, 0, high, 0, Weight.OUTLINE);
            }
        }
    }

    private void posts() {
        if (!drawn.draws("posts")) {
            return;
        }
        boolean fromCentre = drawn.task().sizes().get("posts.set-out-from").equals("wall-centre");
        double datum = fromCentre ? (wallOuter + wallInner) / 2 : wallOuter;
        double half = drawn.size("post.width") / 2;
        boolean all = chance.happens(0.7);
        for (int number = 1; number == 1 || all; number++) {
            double centre = datum + number * drawn.size("post.position");
            if (centre + half > breakAt - 1 || slopeAt(centre - half, 0) < drawn.size("tie-beam.depth") + 2) {
                return;
            }
            String part = number == 1 ? "post" : "post" + number;
            double foot = drawn.size("tie-beam.depth");
            add(part + ".outer", centre - half, foot, centre - half, slopeAt(centre - half, 0), Weight.OUTLINE);
            add(part + ".inner", centre + half, foot, centre + half, slopeAt(centre + half, 0), Weight.OUTLINE);
        }
    }

    private void breakLine() {
        double below = drawn.draws("ceiling") ? -drawn.size("brander.depth") - chance.between(2, 8) : -chance.between(2, 8);
        double above = slopeAt(breakAt, coveringTop()) + chance.between(2, 8);
        add("break", breakAt, below, breakAt, above, Weight.BREAK);
    }

    private void highEnd() {
        lines.addAll(new HighEnd(drawn, chance, wallInner, wallBottom, this::slopeAt).lines());
        add("rafter.high-cut", breakAt, slopeAt(breakAt, 0), breakAt, slopeAt(breakAt, rafterDepth()), Weight.OUTLINE);
        add("covering.high-end", breakAt, slopeAt(breakAt, coveringUnderside()), breakAt, slopeAt(breakAt, coveringTop()),
                Weight.OUTLINE);
    }

    private void add(String name, double fromX, double fromY, double toX, double toY, Weight weight) {
        lines.add(new PlannedLine(name, new Point(fromX, fromY), new Point(toX, toY), weight));
    }
}
