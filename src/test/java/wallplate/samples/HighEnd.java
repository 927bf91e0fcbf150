package wallplate.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import wallplate.geometry.Point;
import wallplate.samples.PlannedLine.Weight;

/** The high wall of a lean-to roof with its plate, in the section's own axes. */
final class HighEnd {

    private final Intention drawn;
    private final Chance chance;
    private final double inner;
    private final double outer;
    private final double bottom;
    private final double plateTop;
    private final List<PlannedLine> lines = new ArrayList<>();

    /**
     * @param lowWallInner x of the low wall's inner face
     * @param wallBottom the height at which both walls are cut off
     * @param slopeAt the height at an x of the parallel that lies so far above the rafter's underside
     */
    HighEnd(Intention drawn, Chance chance, double lowWallInner, double wallBottom, DoubleBinaryOperator slopeAt) {
        this.drawn = drawn;
        this.chance = chance;
        this.inner = lowWallInner + drawn.size("high-wall.clear-span");
        this.outer = inner + drawn.size("high-wall.thickness");
        this.bottom = wallBottom;
        this.plateTop = slopeAt.applyAsDouble(inner, 0);
    }

    List<PlannedLine> lines() {
        double top = drawn.draws("high-plate") ? plateTop - drawn.size("high-plate.depth") : plateTop;
        add("high-wall.inner", inner, bottom, inner, top, Weight.OUTLINE);
        add("high-wall.outer", outer, bottom, outer, top, Weight.OUTLINE);
        add("high-wall.top", inner, top, outer, top, Weight.OUTLINE);
        add("high-wall.break", inner - 2.2, bottom, outer + 2.2, bottom, Weight.THIN);
        if (drawn.hatches("wall")) {
            List<Point> face = List.of(
                    new Point(inner, bottom), new Point(outer, bottom), new Point(outer, top), new Point(inner, top));
            lines.addAll(Hatching.over(face, 45 + chance.error(1.5), chance.between(1.8, 3.6), chance));
        }
        if (drawn.draws("high-plate")) {
            plate(top);
        }
        return List.copyOf(lines);
    }

    private void plate(double bottomY) {
        double end = inner + drawn.size("high-plate.width");
        add("high-plate.inner", inner, bottomY, inner, plateTop, Weight.OUTLINE);
        add("high-plate.outer", end, bottomY, end, plateTop, Weight.OUTLINE);
        add("high-plate.top", inner, plateTop, end, plateTop, Weight.OUTLINE);
        if (drawn.crosses("high-plate")) {
            add("high-plate.cross1", inner, plateTop, end, bottomY, Weight.THIN);
            add("high-plate.cross2", inner, bottomY, end, plateTop, Weight.THIN);
        }
    }

    private void add(String name, double fromX, double fromY, double toX, double toY, Weight weight) {
        lines.add(new PlannedLine(name, new Point(fromX, fromY), new Point(toX, toY), weight));
    }
}
