package wallplate.sheet.page;

import java.util.List;
import java.util.stream.Stream;
import wallplate.geometry.Segment;

/**
 * The rows of a title block among the lines along one axis of a page: lines over one another in a strip along a side of the
 * page, that end at the frame across it. Pencil rows are found in pieces, so what lies over or under a row and is no longer
 * belongs to it.
 *
 * @param low lines in the strip along either side of the page, without the frame's own
 * @param across the frame's lines across them, as far as they were found
 * @param alongX whether the lines run along the page's x axis
 * @param side the length of the page along the lines
 */
record TitleBlock(List<Segment> low, List<Segment> across, boolean alongX, double side) {

    /** Title blocks are hardly higher; ISO 7200 leaves their height open. */
    static final double HEIGHT = 60;

    private static final double TOUCH = 1.8;
    /** Frames stand 10 to 20 mm from the paper's edge, where ISO 5457 puts them. */
    private static final double FRAME_MARGIN = 20;
    /** How nearly the rows of a title block end alike, and by how much a piece may stand out of its row. */
    private static final double END_ALIKE = 5;

    private static final double LEAST_APART = 3;
    private static final double SHORTEST_ROW = 25;
    /** A row is no longer than this share of the page: the bar stands beside it. What is longer is the frame. */
    private static final double LONGEST_ROW_SHARE = 0.5;
    /** How long an interruption of a row may be, and how far off its line the next piece. */
    private static final double GAP = 25;

    private static final double OFF_LINE = 0.6;

    /** From where to where a row runs, with all its pieces. */
    private record Reach(double from, double to) {

        boolean holds(Reach other) {
            return other.from > from - END_ALIKE && other.to < to + END_ALIKE;
        }

        boolean endsLike(Reach other) {
            return Math.abs(other.from - from) < END_ALIKE || Math.abs(other.to - to) < END_ALIKE;
        }

        double length() {
            return to - from;
        }
    }

    /** Every line that belongs to the title block. */
    List<Segment> lines() {
        return low.stream().filter(this::isRow).flatMap(this::heldBy).distinct().toList();
    }

    private Stream<Segment> heldBy(Segment row) {
        Reach reach = joined(row);
        return low.stream().filter(line -> reach.holds(reach(line)) && apart(row, line) < HEIGHT);
    }

    /** One other row is enough beside one that stands at the frame itself, two where the frame may be. */
    private boolean isRow(Segment line) {
        Reach reach = joined(line);
        if (reach.length() < SHORTEST_ROW || reach.length() > LONGEST_ROW_SHARE * side) {
            return false;
        }
        long others = low.stream()
                .filter(other -> apart(line, other) > LEAST_APART && apart(line, other) < HEIGHT)
                .filter(other -> reach.holds(reach(other)) && reach.endsLike(reach(other)))
                .count();
        return others >= 2 && endsInTheMargin(reach) || others >= 1 && endsAtFrame(line);
    }

    private boolean endsInTheMargin(Reach reach) {
        return reach.from < FRAME_MARGIN || reach.to > side - FRAME_MARGIN;
    }

    private boolean endsAtFrame(Segment line) {
        return across.stream()
                .anyMatch(frame -> frame.distanceTo(line.start()) < TOUCH || frame.distanceTo(line.end()) < TOUCH);
    }

    /** A row with the pieces in line with it; without them where they would make more than a row. */
    private Reach joined(Segment row) {
        Reach whole = grown(row);
        return whole.length() > LONGEST_ROW_SHARE * side ? reach(row) : whole;
    }

    private Reach grown(Segment row) {
        Reach reach = reach(row);
        boolean grown = true;
        while (grown) {
            grown = false;
            for (Segment piece : low) {
                Reach next = reach(piece);
                boolean near = next.from < reach.to + GAP && next.to > reach.from - GAP;
                if (near && apart(row, piece) < OFF_LINE && !(next.from >= reach.from && next.to <= reach.to)) {
                    reach = new Reach(Math.min(reach.from, next.from), Math.max(reach.to, next.to));
                    grown = true;
                }
            }
        }
        return reach;
    }

    private static double apart(Segment row, Segment line) {
        return Math.abs(row.line().distanceTo(line.midpoint()));
    }

    private Reach reach(Segment line) {
        double start = alongX ? line.start().x() : line.start().y();
        double end = alongX ? line.end().x() : line.end().y();
        return new Reach(Math.min(start, end), Math.max(start, end));
    }
}
