package wallplate.sheet.page;

import java.util.Optional;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.page.BarFinder.Bar;

/**
 * How a rough page becomes the level one: stretched, turned by the drawing's own level and by quarter turns, and scaled
 * by the bar.
 *
 * @param scale true millimetres to a rough millimetre along the drawing's level, 1 where there is no bar
 * @param level the drawing's own level on the stretched page
 * @param toRough from level millimetres to rough ones
 * @param widthMm of the level page, which holds the whole rough one
 */
public record Levelling(double scale, LevelDirection level, PageMap toRough, double widthMm, double heightMm) {

    /**
     * The levelling of a rough page.
     *
     * @param ruled the lines along the drawing's axes
     * @param barMm how long the bar should be
     */
    public static Levelling of(
            RoughPage rough, Turn turn, Stretch stretch, RuledLines ruled, Optional<Bar> bar, double barMm) {
        LevelDirection level = LevelDirection.of(
                ruled.alongX().stream().map(line -> stretched(line, stretch)).toList(),
                ruled.alongY().stream().map(line -> stretched(line, stretch)).toList(),
                ruled.tiltDegrees());
        double scale = bar.map(found -> barMm / stretched(found.segment(), stretch).length())
                .orElse(1.0);
        return turned(rough, stretch, level, level.tiltDegrees() + turn.degrees(), scale);
    }

    private static RuledLine stretched(RuledLine line, Stretch stretch) {
        return new RuledLine(stretched(line.segment(), stretch), line.deviationDegrees());
    }

    private static Segment stretched(Segment segment, Stretch stretch) {
        return Segment.between(
                segment.start().x(),
                segment.start().y() * stretch.factor(),
                segment.end().x(),
                segment.end().y() * stretch.factor());
    }

    private static Levelling turned(
            RoughPage rough, Stretch stretch, LevelDirection level, double turnDegrees, double scale) {
        Vector right = Vector.atDegrees(turnDegrees);
        Vector up = right.leftNormal();
        double left = Double.MAX_VALUE;
        double bottom = Double.MAX_VALUE;
        double most = -Double.MAX_VALUE;
        double top = -Double.MAX_VALUE;
        for (double x : new double[] {0, rough.widthMm()}) {
            for (double y : new double[] {0, rough.heightMm() * stretch.factor()}) {
                Vector corner = new Vector(x, y);
                left = Math.min(left, corner.dot(right));
                most = Math.max(most, corner.dot(right));
                bottom = Math.min(bottom, corner.dot(up));
                top = Math.max(top, corner.dot(up));
            }
        }
        Vector origin = right.times(left).plus(up.times(bottom));
        PageMap turned = PageMap.affine(
                right.x() / scale, up.x() / scale, origin.x(), right.y() / scale, up.y() / scale, origin.y());
        PageMap unstretched = PageMap.affine(1, 0, 0, 0, 1 / stretch.factor(), 0);
        return new Levelling(
                scale, level, unstretched.after(turned), (most - left) * scale, (top - bottom) * scale);
    }
}
