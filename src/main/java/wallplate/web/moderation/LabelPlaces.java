package wallplate.web.moderation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Finds places for the labels of dots: the first of four corners where a label meets no dot and no other label, and the
 * corner it meets least at where there is none. In the drawing's units.
 */
final class LabelPlaces {

    private static final double DOT = 5;
    private static final double AWAY = 7;
    private static final double LETTER = 6;
    private static final double HEIGHT = 11;

    private final List<Box> taken = new ArrayList<>();

    private record Box(double left, double top, double right, double bottom) {

        double overlap(Box other) {
            double wide = Math.min(right, other.right) - Math.max(left, other.left);
            double high = Math.min(bottom, other.bottom) - Math.max(top, other.top);
            return wide > 0 && high > 0 ? wide * high : 0;
        }
    }

    /** Keeps labels off a dot. */
    void keepFree(double x, double y) {
        taken.add(new Box(x - DOT, y - DOT, x + DOT, y + DOT));
    }

    Label place(double x, double y, String text) {
        double width = LETTER * text.length();
        Box chosen = corners(x, y, width).stream()
                .min(Comparator.comparingDouble(this::met))
                .orElseThrow();
        taken.add(chosen);
        return new Label(chosen.left(), chosen.bottom() - 1, text);
    }

    private double met(Box corner) {
        return taken.stream().mapToDouble(corner::overlap).sum();
    }

    private static List<Box> corners(double x, double y, double width) {
        double above = y - 3 - HEIGHT;
        double below = y + 3;
        return List.of(
                new Box(x + AWAY, above, x + AWAY + width, above + HEIGHT),
                new Box(x - AWAY - width, above, x - AWAY, above + HEIGHT),
                new Box(x + AWAY, below, x + AWAY + width, below + HEIGHT),
                new Box(x - AWAY - width, below, x - AWAY, below + HEIGHT));
    }
}
