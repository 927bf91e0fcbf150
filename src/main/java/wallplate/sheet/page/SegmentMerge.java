package wallplate.sheet.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;

/** Joins pieces that lie on one straight line to the longer segments that they are pieces of. */
final class SegmentMerge {

    private static final Comparator<Segment> LONGEST_FIRST = Comparator.comparingDouble(Segment::length)
            .reversed()
            .thenComparingDouble(segment -> segment.start().x())
            .thenComparingDouble(segment -> segment.start().y())
            .thenComparingDouble(segment -> segment.end().x())
            .thenComparingDouble(segment -> segment.end().y());

    private final double offset;
    private final double gap;

    /**
     * @param offset how far beside the line a piece may lie
     * @param gap how long an interruption may be
     */
    SegmentMerge(double offset, double gap) {
        this.offset = offset;
        this.gap = gap;
    }

    /** The joined segments, longest first. */
    List<Segment> merge(List<Segment> pieces) {
        List<Segment> left = new ArrayList<>(pieces);
        left.sort(LONGEST_FIRST);
        List<Segment> merged = new ArrayList<>();
        boolean[] taken = new boolean[left.size()];
        for (int i = 0; i < left.size(); i++) {
            if (!taken[i]) {
                taken[i] = true;
                merged.add(grow(left.get(i), left, taken));
            }
        }
        merged.sort(LONGEST_FIRST);
        return merged;
    }

    private Segment grow(Segment seed, List<Segment> pieces, boolean[] taken) {
        Line line = seed.line();
        double from = 0;
        double to = seed.length();
        boolean grown = true;
        while (grown) {
            grown = false;
            for (int i = 0; i < pieces.size(); i++) {
                Segment piece = pieces.get(i);
                if (taken[i] || !beside(line, piece)) {
                    continue;
                }
                double low = Math.min(line.positionOf(piece.start()), line.positionOf(piece.end()));
                double high = Math.max(line.positionOf(piece.start()), line.positionOf(piece.end()));
                if (low > to + gap || high < from - gap) {
                    continue;
                }
                taken[i] = true;
                grown = true;
                from = Math.min(from, low);
                to = Math.max(to, high);
            }
        }
        return line.between(from, to);
    }

    private boolean beside(Line line, Segment piece) {
        return near(line, piece.start()) && near(line, piece.end());
    }

    private boolean near(Line line, Point point) {
        return Math.abs(line.distanceTo(point)) <= offset;
    }
}
