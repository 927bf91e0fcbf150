package wallplate.report.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.report.Box;
import wallplate.sheet.InkImage;

/**
 * The measured parts drawn over the picture of a sheet, each with its number in a ring.
 *
 * <p>A number stands where the paper is bare, as near to its part as the other numbers allow; a dark ring says that
 * there is something to look at.
 */
final class NumberedOverlay {

    private static final double RING_MM = 2.2;
    private static final double[] DISTANCES_MM = {5, 7.5, 10.5, 14, 18};
    private static final int DIRECTIONS = 16;
    /** What a ring's whole area in black ink counts against it, in millimetres of distance. */
    private static final double COST_OF_INK_MM = 60;

    private final InkImage ink;
    private final Box region;
    private final Box place;
    private final List<Box> taken = new ArrayList<>();

    /**
     * @param region what is shown of the sheet
     * @param place where it stands on the report
     */
    NumberedOverlay(InkImage ink, Box region, Box place) {
        this.ink = ink;
        this.region = region;
        this.place = place;
    }

    void draw(Canvas canvas, List<PartLines> parts) throws IOException {
        canvas.clip(place);
        for (PartLines part : parts) {
            for (Segment line : part.lines()) {
                canvas.line(region.mapTo(place, line), part.pen());
            }
        }
        canvas.unclip();
        for (PartLines part : parts) {
            drawNumber(canvas, part);
        }
    }

    private void drawNumber(Canvas canvas, PartLines part) throws IOException {
        Segment longest = part.lines().stream()
                .max(Comparator.comparingDouble(Segment::length))
                .orElseThrow();
        Point anchor = region.mapTo(place, longest.midpoint());
        if (!place.contains(anchor)) {
            return;
        }
        Point centre = freePlace(anchor);
        taken.add(ringAt(centre));
        canvas.line(anchor.x(), anchor.y(), centre.x(), centre.y(), Pen.solid(0.2, Ink.GRAPHITE));
        canvas.disc(anchor, 0.45, Ink.GRAPHITE, Pen.solid(0.1, Ink.GRAPHITE));
        canvas.disc(centre, RING_MM, part.isRight() ? Ink.PAPER : Ink.GRAPHITE, Pen.solid(0.3, Ink.GRAPHITE));
        Type type = Type.SMALL_BOLD.coloured(part.isRight() ? Ink.GRAPHITE : Ink.PAPER);
        canvas.textCentred(String.valueOf(part.number()), centre.x(), centre.y() - 0.85, type);
    }

    private Point freePlace(Point anchor) {
        Point best = anchor;
        double least = Double.POSITIVE_INFINITY;
        for (double distance : DISTANCES_MM) {
            for (int direction = 0; direction < DIRECTIONS; direction++) {
                double angle = 2 * Math.PI * direction / DIRECTIONS;
                Point candidate =
                        new Point(anchor.x() + distance * Math.cos(angle), anchor.y() + distance * Math.sin(angle));
                double cost = cost(candidate, distance);
                if (cost < least) {
                    least = cost;
                    best = candidate;
                }
            }
        }
        return best;
    }

    private double cost(Point candidate, double distance) {
        Box ring = ringAt(candidate);
        double crowding = taken.stream().filter(ring::overlaps).count() * 1000.0;
        double outside = place.contains(ring) ? 0 : 500;
        return distance + crowding + outside + COST_OF_INK_MM * inkUnder(ring);
    }

    private double inkUnder(Box ring) {
        int across = 9;
        double sum = 0;
        for (int column = 0; column <= across; column++) {
            for (int row = 0; row <= across; row++) {
                Point onReport = new Point(
                        ring.left() + ring.width() * column / across, ring.bottom() + ring.height() * row / across);
                Point onSheet = place.mapTo(region, onReport);
                sum += ink.at(onSheet.x(), onSheet.y()) / 255;
            }
        }
        return sum / ((across + 1) * (across + 1));
    }

    private static Box ringAt(Point centre) {
        return new Box(centre.x() - RING_MM, centre.y() - RING_MM, 2 * RING_MM, 2 * RING_MM).grown(0.4);
    }
}
