package wallplate.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
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
     */
    record Reach(double seenY, double unseenY) {

        boolean isHidden() {
            return unseenY > seenY;
        }
    }

    /** What an upright shows at one height. */
    private enum Sight {
        OWN,
        COVERED,
        FAINT,
        BLANK
    }

    /** Heights at which another line's ink lies on the upright. */
    private record Zone(double fromY, double toY) {

        double length() {
            return toY - fromY;
        }

        boolean holds(double y) {
            return y >= fromY && y <= toY;
        }

        boolean isPartOf(Zone other) {
            return Math.min(toY, other.toY) - Math.max(fromY, other.fromY) > MOST_SHARED * length();
        }
    }

    private static final double STEP_MM = 0.05;
    /** So much of its breadth an upright is surely dark over, wavering as it may. */
    private static final double DARK_PART = 0.8;

    private static final int ACROSS_SAMPLES = 2;
    /** So much of the upright's usual ink is ink, its own or another line's. */
    private static final double INKED = 0.5;

    /** Between an end and a line just beyond it the blur of a scan leaves less than this. */
    private static final double CLEARLY_INKED = 0.7;

    /** So far beside the upright another line must be clear of it, and so long it must be from there. */
    private static final double CLEAR_MM = 0.45;

    private static final double LENGTH_MM = 2;
    private static final double MOST_ACROSS_MM = 1;
    private static final int SAMPLES = 5;
    private static final double STEEPEST_DEGREES = 70;
    private static final double TURN_DEGREES = 2.5;
    /** A line seen at a wrong angle is seen in a part of its true zone, which is the longest. */
    private static final double MOST_SHARED = 0.3;

    private static final double SHORTEST_ZONE_MM = 0.15;

    /** How far below and above a rough end the true one is looked for. */
    private static final double BELOW_MM = 0.6;

    private static final double ABOVE_MM = 2.5;
    /** The lead breaks for a short way anywhere; at the rough end a shorter gap parts the line from what goes on. */
    private static final double GAP_MM = 0.35;

    private static final double GAP_AT_END_MM = 0.15;
    private static final double AT_END_MM = 0.1;
    private static final double SPECK_MM = 0.1;
    private static final double LEAST_RESUMED_MM = 0.15;

    private static final double CLEAR_OF_END_MM = 0.3;

    private final InkImage ink;
    private final Edge upright;
    private final double footY;
    private final double halfBreadthMm;
    private final double roughY;
    private final double usualInk;
    private final List<Zone> zones;

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
        this.zones = zones(Math.max(footY + LeaningUpright.CLEAR_OF_FOOT_MM, roughY - ABOVE_MM), roughY + ABOVE_MM);
    }

    /** How far the upright reaches. */
    Reach reach() {
        double seen = highestSeenBelow(roughY - BELOW_MM);
        double inked = seen;
        boolean isCovered = false;
        double resumed = 0;
        double blank = 0;
        for (double y = seen + STEP_MM; y < roughY + ABOVE_MM; y += STEP_MM) {
            Sight sight = sight(y);
            resumed = sight == Sight.OWN ? resumed + STEP_MM : 0;
            if (sight == Sight.BLANK) {
                blank += STEP_MM;
                if (blank >= (y > roughY - AT_END_MM ? GAP_AT_END_MM : GAP_MM)) {
                    break;
                }
            } else if (resumed >= LEAST_RESUMED_MM || sight == Sight.OWN && y - seen < 1.5 * STEP_MM) {
                seen = y;
                inked = y;
                isCovered = false;
                blank = 0;
            } else if (blank <= SPECK_MM) {
                inked = y;
                isCovered |= sight == Sight.COVERED;
            }
        }
        return isCovered && inked > seen + SPECK_MM ? new Reach(seen, inked) : new Reach(inked, inked);
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
        double here = inkAt(y);
        if (here < INKED * usualInk) {
            return Sight.BLANK;
        }
        if (here < CLEARLY_INKED * usualInk) {
            return Sight.FAINT;
        }
        return zones.stream().anyMatch(zone -> zone.holds(y)) ? Sight.COVERED : Sight.OWN;
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

    private double usualInk() {
        double fromY = footY + LeaningUpright.CLEAR_OF_FOOT_MM;
        double[] inks = new double[Math.max(3, (int) ((roughY - CLEAR_OF_END_MM - fromY) / STEP_MM))];
        for (int at = 0; at < inks.length; at++) {
            inks[at] = inkAt(fromY + at * STEP_MM);
        }
        Arrays.sort(inks);
        return inks[inks.length / 2];
    }

    /** Where lines of any direction but the upright's own come to it from either side. */
    private List<Zone> zones(double fromY, double toY) {
        List<Zone> found = new ArrayList<>();
        for (double degrees = -STEEPEST_DEGREES; degrees <= STEEPEST_DEGREES; degrees += TURN_DEGREES) {
            addZones(fromY, toY, degrees, -1, found);
            addZones(fromY, toY, degrees, 1, found);
        }
        found.sort(Comparator.comparingDouble(Zone::length).reversed());
        List<Zone> kept = new ArrayList<>();
        for (Zone zone : found) {
            if (zone.length() > SHORTEST_ZONE_MM && kept.stream().noneMatch(zone::isPartOf)) {
                kept.add(zone);
            }
        }
        return kept;
    }

    private void addZones(double fromY, double toY, double degrees, int side, List<Zone> found) {
        double start = fromY;
        for (double y = fromY; y <= toY; y += STEP_MM) {
            if (inkBeside(y, degrees, side) < INKED * usualInk) {
                found.add(new Zone(start, y - STEP_MM / 2));
                start = y + STEP_MM / 2;
            }
        }
        found.add(new Zone(start, toY));
    }

    /** The ink of a line that leaves the upright at a height for one side; patches of light graphite are allowed for. */
    private double inkBeside(double y, double degrees, int side) {
        double rise = Math.tan(Math.toRadians(degrees));
        double across = Math.min(MOST_ACROSS_MM, LENGTH_MM * Math.cos(Math.toRadians(degrees)));
        double least = Double.MAX_VALUE;
        double sum = 0;
        for (int sample = 0; sample < SAMPLES; sample++) {
            double off = side * (CLEAR_MM + across * sample / (SAMPLES - 1));
            double here = ink.at(upright.xAt(y) + off, y + off * rise);
            least = Math.min(least, here);
            sum += here;
        }
        return Math.min(sum / SAMPLES, 2 * least);
    }
}
