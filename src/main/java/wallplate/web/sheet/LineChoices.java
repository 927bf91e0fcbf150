package wallplate.web.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.task.PlainNumber;

/**
 * The lines of a sheet among which a person chooses those of a part, as the page shows them.
 *
 * @param lines the nearest to the place measured before first, where there was one, else the longest first
 * @param near where to look at first, in the picture's millimetres, y down
 */
record LineChoices(double widthMm, double heightMm, List<Choice> lines, Optional<SheetOverlay.Place> near) {

    /** More than these are no longer a choice. */
    private static final int MOST = 150;

    private static final double UPRIGHT_DEGREES = 80;
    private static final double LEVEL_DEGREES = 4;

    /**
     * A line to choose.
     *
     * @param value its ends in page millimetres, y up, as the form sends them back
     * @param direction {@code upright}, {@code level} or {@code sloping}
     * @param fromLeft of its middle
     * @param fromBottom of its middle
     */
    record Choice(
            String value,
            SheetOverlay.Line line,
            String direction,
            double lengthMm,
            double fromLeft,
            double fromBottom,
            boolean chosen) {}

    static LineChoices of(KeptLines.Lines found, List<Segment> evidence, List<String> chosen) {
        List<Segment> choices = found.choices();
        double height = found.heightMm();
        Comparator<Segment> order = evidence.isEmpty()
                ? Comparator.comparingDouble(piece -> -piece.length())
                : Comparator.comparingDouble(piece -> distance(piece, evidence));
        List<Choice> lines = choices.stream()
                .sorted(order)
                .limit(MOST)
                .map(piece -> choice(piece, evidence, chosen, height))
                .toList();
        return new LineChoices(found.widthMm(), height, lines, near(evidence, height));
    }

    private static double distance(Segment piece, List<Segment> evidence) {
        return evidence.stream()
                .mapToDouble(stroke -> Math.min(
                        piece.distanceTo(stroke.midpoint()), stroke.distanceTo(piece.midpoint())))
                .min()
                .orElse(0);
    }

    private static Optional<SheetOverlay.Place> near(List<Segment> evidence, double height) {
        return evidence.stream()
                .min(Comparator.comparingDouble(Segment::length))
                .map(stroke -> new SheetOverlay.Place(
                        hundredth(stroke.midpoint().x()), hundredth(height - stroke.midpoint().y())));
    }

    private static Choice choice(Segment piece, List<Segment> evidence, List<String> chosen, double height) {
        Point start = piece.start();
        Point end = piece.end();
        String value = hundredth(start.x()) + " " + hundredth(start.y()) + " " + hundredth(end.x()) + " " + hundredth(end.y());
        return new Choice(
                value,
                new SheetOverlay.Line(
                        hundredth(start.x()), hundredth(height - start.y()), hundredth(end.x()), hundredth(height - end.y())),
                direction(piece),
                piece.length(),
                piece.midpoint().x(),
                piece.midpoint().y(),
                chosen.contains(value));
    }

    private static String direction(Segment piece) {
        double steepness = Math.abs(piece.inclinationDegrees());
        if (steepness > UPRIGHT_DEGREES) {
            return "upright";
        }
        return steepness < LEVEL_DEGREES ? "level" : "sloping";
    }

    /** The pieces that a form sent; what is no piece is left out. */
    static List<Segment> pieces(List<String> values) {
        List<Segment> pieces = new ArrayList<>();
        for (String value : values) {
            List<OptionalDouble> numbers =
                    List.of(value.strip().split(" ")).stream().map(PlainNumber::read).toList();
            boolean whole = numbers.size() == 4
                    && numbers.stream().allMatch(number -> number.isPresent() && Double.isFinite(number.getAsDouble()));
            if (whole) {
                pieces.add(Segment.between(
                        numbers.get(0).getAsDouble(),
                        numbers.get(1).getAsDouble(),
                        numbers.get(2).getAsDouble(),
                        numbers.get(3).getAsDouble()));
            }
        }
        return pieces;
    }

    private static double hundredth(double value) {
        return Math.round(value * 100) / 100.0;
    }
}
