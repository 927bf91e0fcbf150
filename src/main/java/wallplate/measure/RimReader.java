package wallplate.measure;

import java.util.Optional;
import java.util.OptionalDouble;
import wallplate.geometry.Point;
import wallplate.stroke.Edge;

/**
 * Reads how high a gutter's outer line goes: to the tip of its mark, to where its ink was last seen, or somewhere into the
 * ink of other lines.
 */
final class RimReader {

    /**
     * The height of the gutter's free upper end.
     *
     * @param sigma one standard deviation, in millimetres
     * @param doubt why it cannot be told
     * @param rivalY the height that is meant where it is another
     */
    record Rim(double y, double sigma, Optional<String> doubt, Optional<Double> rivalY) {

        /**
         * The rim as far as it is told beside a short line that runs on where the upright ends, almost in its direction, as
         * the covering's end may: over the way on which both are one ink the rim may lie anywhere.
         *
         * @param upright the outer line
         */
        Rim beside(Edge other, Edge upright) {
            double otherLowY = Math.min(other.segment().start().y(), other.segment().end().y()) - OVERSHOT_MM;
            double lowestY = y;
            while (lowestY > otherLowY && isOneInk(other, upright, lowestY)) {
                lowestY -= TOUCHING_MM / 3;
            }
            return doubt.isPresent() || y - lowestY < TOUCHING_MM
                    ? this
                    : anywhere(y, lowestY, sigma, MOST_HIDDEN_BESIDE_MM);
        }

        /**
         * A rim that may lie anywhere between two heights: half-way, or in doubt where they lie further apart than is told.
         *
         * @param y the one that is meant where it is in doubt
         */
        private static Rim anywhere(double y, double otherY, double leastSigma, double mostMm) {
            double hidden = Math.abs(y - otherY);
            return hidden > mostMm
                    ? new Rim(y, leastSigma, Optional.of(COVERED), Optional.of(otherY))
                    : new Rim(
                            (y + otherY) / 2, Math.max(leastSigma, hidden / UNIFORM_DEVIATIONS), Optional.empty(), Optional.empty());
        }

        private static boolean isOneInk(Edge other, Edge upright, double y) {
            return Math.abs(other.line().distanceTo(new Point(upright.xAt(y), y))) < ONE_INK_MM;
        }
    }

    private static final String BROKEN = "the upper end of the gutter's outer line cannot be told: its ink is broken";
    private static final String COVERED = "the upper end of the gutter's outer line lies in the ink of other lines";

    /** A free end that may lie anywhere over a longer way than this is not told. */
    private static final double MOST_HIDDEN_MM = 0.85;

    /** The same beside a line that runs on nearly in its own direction, where what looks like its end may be that line's. */
    private static final double MOST_HIDDEN_BESIDE_MM = 0.6;

    /** The round end of a mark that just touches another line is not told from one that goes into it. */
    private static final double TOUCHING_MM = 0.15;

    /** The middles of two lines that are one ink lie no further apart than this. */
    private static final double ONE_INK_MM = 0.4;
    /** So far a line may run on beyond its corner. */
    private static final double OVERSHOT_MM = 0.3;

    private static final double HIDDEN_SIGMA_MM = 0.15;
    /** So many standard deviations long is the way over which something may lie anywhere. */
    private static final double UNIFORM_DEVIATIONS = Math.sqrt(12);

    private static final double TIP_SIGMA_MM = 0.07;
    private static final double SEEN_SIGMA_MM = 0.12;
    /** A tip further from where the upright was last seen is that of another line. */
    private static final double SAME_END_MM = 0.3;

    /** Where the ink parts best and where the upright was last seen are two readings if they lie further apart than this. */
    private static final double MOST_APART_MM = 0.4;

    private static final double CLEAR_OF_END_MM = 0.4;
    private static final double LEAST_FOLLOWED_MM = 0.1;
    private static final int MOST_FOLLOWED = 3;

    private final DrawingView view;
    private final double x;
    private final double bottomY;

    /** The rim of an outer line that stands about x on a bottom. */
    RimReader(DrawingView view, double x, double bottomY) {
        this.view = view;
        this.x = x;
        this.bottomY = bottomY;
    }

    /** The outer line up to a rim. */
    Edge lineUpTo(double rimY) {
        return view.fit().fit(Level.uprightAt(x), bottomY + LeaningUpright.CLEAR_OF_FOOT_MM, rimY - 0.3, 0.12, 0.25);
    }

    /**
     * The rim; in doubt where another height is as likely, or where it may lie anywhere in the ink of other lines.
     *
     * @param upright the outer line as it was followed
     * @param likeliest the height that was chosen
     * @param rivalY another that is nearly as likely
     */
    Rim read(Edge upright, UprightEnds.End likeliest, Optional<Double> rivalY) {
        UprightEnds.Place rough = new UprightEnds(view.ink(), upright, bottomY).refined(likeliest);
        if (rivalY.isPresent()) {
            return partedByALine(rough, rivalY.get())
                    .orElseGet(() -> new Rim(rough.yMm(), rough.sigmaMm(), Optional.of(BROKEN), rivalY));
        }
        FreeEnd.Reach reach = reach(rough);
        double seenY = reach.seenY() - UprightEnds.ROUND_END_MM;
        if (rough.yMm() > reach.unseenY() - UprightEnds.ROUND_END_MM + MOST_APART_MM) {
            return new Rim(rough.yMm(), rough.sigmaMm(), Optional.of(BROKEN), Optional.of(seenY));
        }
        if (reach.resumedY() > reach.seenY()) {
            double resumedY = reach.resumedY() - UprightEnds.ROUND_END_MM;
            return new Rim(seenY, SEEN_SIGMA_MM, Optional.of(BROKEN), Optional.of(resumedY));
        }
        if (reach.cornerY() < reach.seenY()) {
            double cornerY = reach.cornerY() - UprightEnds.ROUND_END_MM;
            return new Rim(cornerY, HIDDEN_SIGMA_MM, Optional.of(COVERED), Optional.of(seenY));
        }
        if (!reach.isHidden()) {
            return reach.isBeyondALine() ? beyondALine(seenY) : seen(rough, seenY);
        }
        double lowestY = seenY - TOUCHING_MM;
        double highestY = reach.unseenY() - UprightEnds.ROUND_END_MM;
        return Rim.anywhere(lowestY, highestY, HIDDEN_SIGMA_MM, MOST_HIDDEN_MM);
    }

    /** Followed up again as long as more of it is seen: an upright that leans leaves the place where its foot stands. */
    private FreeEnd.Reach reach(UprightEnds.Place rough) {
        double endY = rough.yMm() + UprightEnds.ROUND_END_MM;
        FreeEnd.Reach reach = freeEnd(endY).reach();
        for (int again = 0; again < MOST_FOLLOWED && reach.seenY() > endY && !reach.isBeyondALine(); again++) {
            FreeEnd.Reach further = freeEnd(reach.seenY()).reach();
            if (further.seenY() < reach.seenY() + LEAST_FOLLOWED_MM) {
                return reach;
            }
            reach = further;
        }
        return reach;
    }

    private FreeEnd freeEnd(double endY) {
        Edge upright =
                LeaningUpright.between(view, x, bottomY + LeaningUpright.CLEAR_OF_FOOT_MM, endY - CLEAR_OF_END_MM);
        return new FreeEnd(view.ink(), upright, bottomY, view.fit().breadth(upright), endY);
    }

    /** Of two heights the higher one, where no more than another line that covers the upright lies between them. */
    private Optional<Rim> partedByALine(UprightEnds.Place rough, double rivalY) {
        FreeEnd.Reach reach = freeEnd(Math.min(rough.yMm(), rivalY) + UprightEnds.ROUND_END_MM).reach();
        double seenY = reach.seenY() - UprightEnds.ROUND_END_MM;
        boolean isHigherOne = Math.abs(seenY - Math.max(rough.yMm(), rivalY)) < MOST_APART_MM;
        boolean isTold = reach.isBeyondALine() && !reach.isHidden() && reach.cornerY() == reach.seenY();
        return isTold && isHigherOne ? Optional.of(beyondALine(seenY)) : Optional.empty();
    }

    /** What parts its ink best is the line that passes over it, so that only its tip and its last ink speak for its end. */
    private Rim beyondALine(double seenY) {
        OptionalDouble tip = new RoundTip(view.ink(), lineUpTo(seenY), bottomY).near(seenY + UprightEnds.ROUND_END_MM);
        boolean isTip = tip.isPresent() && Math.abs(tip.getAsDouble() - seenY) < SAME_END_MM;
        return new Rim(isTip ? tip.getAsDouble() : seenY, SEEN_SIGMA_MM, Optional.empty(), Optional.empty());
    }

    /** Its tip, or where the upright was last seen; in doubt where tip, last ink and the best parting of the ink all differ. */
    private Rim seen(UprightEnds.Place rough, double seenY) {
        double tipY = rough.yMm() + UprightEnds.ROUND_END_MM;
        OptionalDouble tip = new RoundTip(view.ink(), lineUpTo(rough.yMm()), bottomY).near(tipY);
        double fromRough = Math.abs(seenY - rough.yMm());
        boolean isTip = tip.isPresent() && Math.abs(tip.getAsDouble() - seenY) < SAME_END_MM;
        if (fromRough > MOST_APART_MM || tip.isPresent() && !isTip && fromRough > SAME_END_MM / 2) {
            return new Rim(rough.yMm(), rough.sigmaMm(), Optional.of(BROKEN), Optional.of(seenY));
        }
        return new Rim(isTip ? tip.getAsDouble() : seenY, isTip ? TIP_SIGMA_MM : SEEN_SIGMA_MM, Optional.empty(), Optional.empty());
    }
}
