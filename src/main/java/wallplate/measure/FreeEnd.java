package wallplate.measure;

import java.util.Arrays;
import java.util.OptionalDouble;
import wallplate.sheet.InkImage;
import wallplate.stroke.Edge;

/**
 * How far an upright is seen to reach, and how far it may go on unseen in the ink of other lines that pass over its end or
 * meet it there.
 */
final class FreeEnd {

    /**
     * The end of an upright's mark.
     *
     * @param seenY the highest place where ink lies that can only be the upright's
     * @param unseenY how high the upright may go on in other lines' ink; {@code seenY} where its end is seen
     * @param isBeyondALine whether the upright was seen again above a line that covers it
     * @param cornerY where it was last seen below a line that ends on it, if only above that it was seen again: it may be
     *     that other line's corner; {@code seenY} elsewhere
     * @param resumedY where ink like its own lies again, shortly above an end in other lines' ink; {@code seenY} where none does
     */
    record Reach(double seenY, double unseenY, boolean isBeyondALine, double cornerY, double resumedY) {

        boolean isHidden() {
            return unseenY > seenY;
        }
    }

    /** What an upright shows at one height. */
    private enum Sight {
        OWN,
        PALE,
        COVERED,
        BLANK
    }

    private static final double STEP_MM = 0.05;
    /** So much of its breadth an upright is surely dark over, wavering as it may. */
    private static final double DARK_PART = 0.8;

    private static final int ACROSS_SAMPLES = 2;
    /** So much of the upright's usual ink is ink, its own or another line's. */
    private static final double INKED = 0.5;

    /** After a gap what goes on is the upright where it is as dark as this; a construction line is paler and thinner. */
    private static final double CLEARLY_INKED = 0.7;

    /** Where other lines leave more than this, the upright's own ink can no longer be told from theirs. */
    private static final double COVERING = 0.75;

    /** The upright is there where so much of what other lines leave free of it is inked, however little that is. */
    private static final double OWN_PART = 0.4;

    private static final double LEAST_FREE = 0.6;

    /** What leaves less than this beside the upright is no line. */
    private static final double LINE_PART = 0.35;

    /** How far below and above a rough end the true one is looked for. */
    private static final double BELOW_MM = 0.6;

    private static final double ABOVE_MM = 2.5;
    /** The lead breaks for a short way anywhere; at the rough end a shorter gap parts the line from what goes on. */
    private static final double GAP_MM = 0.35;

    private static final double GAP_AT_END_MM = 0.15;
    private static final double AT_END_MM = 0.1;
    private static final double SPECK_MM = 0.1;
    private static final double LEAST_RESUMED_MM = 0.15;
    /** Beyond a line that passes over the upright so little of it is enough; beyond one that ends on it, as where two meet in a corner, it takes more. */
    private static final double LEAST_BEYOND_MM = 0.1;

    private static final double LEAST_BEYOND_A_CORNER_MM = 0.35;

    private static final double RESUMES_WITHIN_MM = 1.5;
    private static final double LEAST_OWN_AGAIN_MM = 0.25;

    private static final double CLEAR_OF_END_MM = 0.3;
    private static final double HALF_STEP_MM = STEP_MM / 2;

    private final InkImage ink;
    private final Edge upright;
    private final double footY;
    private final double halfBreadthMm;
    private final double roughY;
    private final double usualInk;
    private final PassingLines others;

    /**
     * The end of an upright's mark.
     *
     * @param upright as fitted over its length
     * @param footY the height of the level line it stands on
     * @param breadthMm of its line
     * @param roughY about where its mark ends
     */
    FreeEnd(InkImage ink, Edge upright, double footY, double breadthMm, double roughY) {
        this.ink = ink;
        this.upright = upright;
        this.halfBreadthMm = DARK_PART * breadthMm / 2;
        this.footY = footY;
        this.roughY = roughY;
        this.usualInk = usualInk();
        double fromY = Math.max(footY + LeaningUpright.CLEAR_OF_FOOT_MM, roughY - BELOW_MM - ABOVE_MM);
        this.others = new PassingLines(ink, upright, fromY, roughY + ABOVE_MM, LINE_PART * usualInk);
    }

    /** How far the upright reaches. */
    Reach reach() {
        double seen = highestSeenBelow(roughY - BELOW_MM);
        double covered = seen;
        boolean isCorner = false;
        boolean isBeyond = false;
        double cornerY = Double.POSITIVE_INFINITY;
        double resumed = 0;
        double blank = 0;
        for (double y = seen + STEP_MM; y < roughY + ABOVE_MM; y += STEP_MM) {
            Sight sight = sight(y);
            boolean isCovered = covered > seen;
            boolean goesOn = blank < SPECK_MM + HALF_STEP_MM;
            boolean isOwn = sight == Sight.OWN || sight == Sight.PALE && goesOn;
            resumed = isOwn ? resumed + STEP_MM : 0;
            if (sight == Sight.BLANK) {
                blank += STEP_MM;
                double longest = isCovered || y > roughY - AT_END_MM ? GAP_AT_END_MM : GAP_MM;
                if (blank > longest - HALF_STEP_MM) {
                    break;
                }
            } else if (sight == Sight.COVERED && goesOn) {
                covered = y;
                isCorner |= !others.passAt(y);
            } else if (isOwn && resumed > leastResumed(isCovered, isCorner, goesOn) - HALF_STEP_MM) {
                isBeyond |= isCovered;
                cornerY = isCovered && isCorner ? Math.min(cornerY, seen) : cornerY;
                seen = y;
                covered = y;
                isCorner = false;
                blank = 0;
            } else if (isOwn && isCovered) {
                covered = y;
            }
        }
        boolean isHidden = covered > seen + SPECK_MM;
        return new Reach(
                seen,
                isHidden ? covered : seen,
                isBeyond,
                Math.min(cornerY, seen),
                isHidden || isBeyond ? resumedAbove(covered).orElse(seen) : seen);
    }

    /** How high ink goes that is like the upright's own, shortly above what looks like its end and for longer than a speck. */
    private OptionalDouble resumedAbove(double endY) {
        double own = 0;
        double last = endY;
        for (double y = endY + STEP_MM; y < endY + RESUMES_WITHIN_MM; y += STEP_MM) {
            Sight sight = sight(y);
            if (sight == Sight.OWN || sight == Sight.PALE) {
                own += STEP_MM;
                last = y;
            }
        }
        return own > LEAST_OWN_AGAIN_MM ? OptionalDouble.of(last) : OptionalDouble.empty();
    }

    /** How much of the upright must be seen to know that it goes on. */
    private static double leastResumed(boolean isCovered, boolean isCorner, boolean goesOn) {
        if (!isCovered) {
            return goesOn ? STEP_MM : LEAST_RESUMED_MM;
        }
        return isCorner ? LEAST_BEYOND_A_CORNER_MM : LEAST_BEYOND_MM;
    }

    private double highestSeenBelow(double fromY) {
        double lowest = footY + LeaningUpright.CLEAR_OF_FOOT_MM;
        double y = Math.max(lowest, fromY);
        while (y > lowest && sight(y) != Sight.OWN) {
            y -= STEP_MM;
        }
        return y;
    }

    private Sight sight(double y) {
        double here = inkAt(y) / usualInk;
        if (!(here >= INKED)) {
            return Sight.BLANK;
        }
        double theirs = otherInkAt(y) / usualInk;
        boolean isOwn = theirs <= COVERING && here - theirs > OWN_PART * Math.max(LEAST_FREE, 1 - theirs);
        if (!isOwn) {
            return Sight.COVERED;
        }
        return here >= CLEARLY_INKED ? Sight.OWN : Sight.PALE;
    }

    /** The mean ink across the upright's own breadth, over which a construction line that runs on is thinner. */
    private double inkAt(double y) {
        double x = upright.xAt(y);
        double sum = 0;
        for (int sample = -ACROSS_SAMPLES; sample <= ACROSS_SAMPLES; sample++) {
            sum += ink.at(x + halfBreadthMm * sample / ACROSS_SAMPLES, y);
        }
        return sum / (2 * ACROSS_SAMPLES + 1);
    }

    /** What other lines leave of that. */
    private double otherInkAt(double y) {
        double sum = 0;
        for (int sample = -ACROSS_SAMPLES; sample <= ACROSS_SAMPLES; sample++) {
            sum += others.inkAt(halfBreadthMm * sample / ACROSS_SAMPLES, y);
        }
        return sum / (2 * ACROSS_SAMPLES + 1);
    }

    private double usualInk() {
        double fromY = footY + LeaningUpright.CLEAR_OF_FOOT_MM;
        double[] inks = new double[Math.max(3, (int) ((roughY - CLEAR_OF_END_MM - fromY) / STEP_MM))];
        for (int at = 0; at < inks.length; at++) {
            inks[at] = inkAt(fromY + at * STEP_MM);
        }
        Arrays.sort(inks);
        return inks[inks.length / 2];
    }
}
