package wallplate.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.geometry.Angles;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.stroke.Edge;

/** Pieces of the hatch lines between the faces of a wall, which run at 45 degrees (ISO 128-3; the number from memory). */
final class HatchLines {

    static final List<Double> DIRECTIONS_DEGREES = List.of(45.0, -45.0);

    private static final double MOST_OFF_DEGREES = 8;
    private static final double HALF_PIECE_MM = 1.5;
    /** The ends of a piece keep this clear of a face's own ink. */
    private static final double CLEAR_OF_FACE_MM = 0.5;

    private static final double ROW_MM = 1.3;
    private static final double STEP_MM = 0.1;
    private static final double INKED_PART = 0.3;
    private static final double COVERED = 0.85;
    /** More pieces than this make a median no surer. */
    private static final int ENOUGH = 16;

    private static final Map<String, String> FACES = Map.of("wall.outer", "wall.inner", "high-wall.inner", "high-wall.outer");

    private final DrawingView view;

    HatchLines(DrawingView view) {
        this.view = view;
    }

    /** The pieces found; empty where no wall has both its faces. */
    Optional<List<Edge>> between(Map<String, Edge> edges) {
        List<String> left = FACES.keySet().stream()
                .filter(face -> edges.containsKey(face) && edges.containsKey(FACES.get(face)))
                .sorted()
                .toList();
        List<Edge> pieces = new ArrayList<>();
        left.forEach(face -> addBetween(edges.get(face), edges.get(FACES.get(face)), pieces));
        return left.isEmpty() ? Optional.empty() : Optional.of(pieces);
    }

    private void addBetween(Edge left, Edge right, List<Edge> pieces) {
        double low = Math.max(low(left), low(right)) + HALF_PIECE_MM;
        double high = Math.min(high(left), high(right)) - HALF_PIECE_MM;
        for (double y = low; y < high && pieces.size() < ENOUGH; y += ROW_MM) {
            double clear = HALF_PIECE_MM * Math.cos(Math.toRadians(45)) + CLEAR_OF_FACE_MM;
            for (double x = left.xAt(y) + clear; x < right.xAt(y) - clear; x += STEP_MM) {
                if (isCrest(x, y)) {
                    piece(new Point(x, y)).ifPresent(pieces::add);
                }
            }
        }
    }

    private static double low(Edge upright) {
        return Math.min(upright.segment().start().y(), upright.segment().end().y());
    }

    private static double high(Edge upright) {
        return Math.max(upright.segment().start().y(), upright.segment().end().y());
    }

    /** Whether the ink is at its darkest here along a level line. */
    private boolean isCrest(double x, double y) {
        double here = view.ink().at(x, y);
        return here >= INKED_PART * view.outlineInk()
                && here > view.ink().at(x - STEP_MM, y)
                && here >= view.ink().at(x + STEP_MM, y);
    }

    private Optional<Edge> piece(Point middle) {
        for (double direction : DIRECTIONS_DEGREES) {
            Line line = Line.at(middle, direction);
            if (view.fit().coverage(line, -HALF_PIECE_MM, HALF_PIECE_MM, INKED_PART) >= COVERED) {
                Edge piece = view.fit().fit(line, -HALF_PIECE_MM, HALF_PIECE_MM, 6, 0.25);
                if (Angles.between(piece.line().inclinationDegrees(), direction) <= MOST_OFF_DEGREES) {
                    return Optional.of(piece);
                }
            }
        }
        return Optional.empty();
    }
}
