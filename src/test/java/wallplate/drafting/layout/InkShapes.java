package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Picture;
import wallplate.drafting.paper.TextMeasure;
import wallplate.drafting.pdf.FaceWidths;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;

/** The ink of a picture as shapes of the JTS topology suite, which knows nothing of how the picture was laid out. */
final class InkShapes {

    private static final GeometryFactory SHAPES = new GeometryFactory();
    private static final TextMeasure MEASURE = FaceWidths.shared();

    private InkShapes() {}

    /** From the baseline to the top of the capitals, as long as the text is lettered. */
    static Geometry of(Ink.Lettering lettering) {
        double width = MEASURE.widthMm(lettering);
        Point start = lettering.start(width);
        Vector along = Vector.atDegrees(lettering.angleDegrees()).times(width);
        Vector up = Vector.atDegrees(lettering.angleDegrees()).leftNormal().times(lettering.heightMm());
        return polygon(List.of(start, start.plus(along), start.plus(along).plus(up), start.plus(up)));
    }

    static Geometry of(Ink.Stroke stroke) {
        return SHAPES.createLineString(new Coordinate[] {
            coordinate(stroke.segment().start()), coordinate(stroke.segment().end())
        });
    }

    static Geometry of(Ink.Area area) {
        return polygon(area.corners());
    }

    static Geometry polygon(List<Point> corners) {
        Coordinate[] ring = new Coordinate[corners.size() + 1];
        for (int corner = 0; corner <= corners.size(); corner++) {
            ring[corner] = coordinate(corners.get(corner % corners.size()));
        }
        return SHAPES.createPolygon(ring);
    }

    private static Coordinate coordinate(Point point) {
        return new Coordinate(point.x(), point.y());
    }

    /** Every text that a line, an area or another text runs into, in words; empty on a clean picture. */
    static List<String> throughLetters(Picture picture) {
        List<Ink.Lettering> texts = inks(picture, Ink.Lettering.class);
        List<String> found = new ArrayList<>();
        for (int first = 0; first < texts.size(); first++) {
            Ink.Lettering text = texts.get(first);
            Geometry letters = of(text);
            for (Ink.Stroke stroke : inks(picture, Ink.Stroke.class)) {
                if (letters.intersects(of(stroke))) {
                    found.add("\"" + text.text() + "\" on a line of " + stroke.owner());
                }
            }
            for (Ink.Area area : inks(picture, Ink.Area.class)) {
                if (letters.intersects(of(area))) {
                    found.add("\"" + text.text() + "\" on an area of " + area.owner());
                }
            }
            for (Ink.Lettering other : texts.subList(first + 1, texts.size())) {
                if (letters.intersects(of(other))) {
                    found.add("\"" + text.text() + "\" on \"" + other.text() + "\"");
                }
            }
        }
        return found;
    }

    static <T extends Ink> List<T> inks(Picture picture, Class<T> kind) {
        return picture.inks().stream().filter(kind::isInstance).map(kind::cast).toList();
    }
}
