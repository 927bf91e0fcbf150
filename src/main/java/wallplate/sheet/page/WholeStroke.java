package wallplate.sheet.page;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;

/**
 * Measures the direction of a ruled stroke over its whole length from where it stands alone.
 *
 * <p>A line that was found in a part is followed to the stroke's ends. Places where another stroke crosses, touches or runs
 * close beside it say where that one is, too, and are left out: hatching, corners and a board's second edge would turn a short
 * line by some tenths of a degree.
 */
final class WholeStroke {

    /** How far apart the stroke is looked at, in millimetres. */
    private static final double STATION = 0.25;

    private static final int FEWEST_STATIONS = 6;
    /** The stroke's own ink lies so near to its centre line, in millimetres. */
    private static final double OWN = 0.36;

    private static final double BESIDE = 0.8;
    /** Ink beside the stroke, as a share of its own, that is another stroke's; and how much more its own may be than usual. */
    private static final double MOST_BESIDE = 0.45;

    private static final double LEAST_OWN = 0.3;
    private static final double MOST_OWN = 1.8;
    private static final double WIDEST = 1.45;
    /** The share of places from which a stroke's usual breadth is taken, because others only broaden it. */
    private static final double USUAL_BREADTH = 0.4;
    /** How far the stroke may lie beside where it was looked for. */
    private static final double LOST = 0.3;

    private static final double FARTHEST_OFF = 0.6;
    private static final double MOST_TURNED = 0.8;
    /** A stroke goes on over gaps up to so long, where ink lies so near to its line, and for no more than so far. */
    private static final double LONGEST_GAP = 0.8;

    private static final double GOES_ON = 0.12;
    private static final double GOES_ON_INK = 0.45;
    private static final double FARTHEST_ON = 60;
    /** The pencil's tip is round: an end says nothing about the direction. */
    private static final double TIP = 0.15;

    private static final double FIRST_SCATTER = 0.2;
    private static final double LEAST_SCATTER = 0.04;
    private static final double OUTLYING = 2.5;
    private static final int TURNS = 6;
    /** A hand wavers over about so many millimetres: places nearer to each other tell the same; from trials. */
    private static final double WAVER = 1;
    /** How much farther off strokes are than their places' scatter says; from trials. */
    private static final double UNSAID = 1.5;
    /** What is shorter, or stands alone along less than this share, has no direction to speak of. */
    private static final double SHORTEST = 8;

    private static final double LEAST_ALONE = 0.25;

    private final LineRefit refit;

    WholeStroke(LineRefit refit) {
        this.refit = refit;
    }

    /** A stroke's line over y = offset + slope x, x from the middle of the segment it was found as. */
    private record Fit(double offset, double slope, double deviation, int alone, int stations, double ink) {

        double at(double x) {
            return offset + slope * x;
        }
    }

    /** What is seen across the stroke at one place: where its centre lies, and how much ink it has, it and its sides. */
    private record Place(double centre, double own, double beside, double breadth) {}

    /** The whole stroke; empty where it is short or stands alone hardly anywhere. */
    Optional<RuledLine> measured(Segment found) {
        double half = found.length() / 2;
        Optional<Fit> first = fit(found, -half, half, new Fit(0, 0, 0, 0, 0, 0));
        if (first.isEmpty()) {
            return Optional.empty();
        }
        double from = end(found, -half, -1, first.get()) + TIP;
        double to = end(found, half, 1, first.get()) - TIP;
        return fit(found, from, to, first.get())
                .filter(fit -> to - from > SHORTEST && fit.alone >= LEAST_ALONE * fit.stations)
                .map(fit -> new RuledLine(segment(found, from, to, fit), UNSAID * Math.toDegrees(fit.deviation)));
    }

    private static Segment segment(Segment found, double from, double to, Fit fit) {
        Vector along = found.vector().unit();
        Vector across = found.line().direction().leftNormal();
        Point middle = found.midpoint();
        return new Segment(
                middle.plus(along.times(from)).plus(across.times(fit.at(from))),
                middle.plus(along.times(to)).plus(across.times(fit.at(to))));
    }

    private Optional<Fit> fit(Segment found, double from, double to, Fit expected) {
        int count = Math.max(FEWEST_STATIONS, (int) Math.round((to - from) / STATION));
        double[] along = new double[count];
        Place[] places = new Place[count];
        for (int i = 0; i < count; i++) {
            along[i] = from + (to - from) * (i + 0.5) / count;
            places[i] = place(found, along[i], expected.at(along[i]));
        }
        double ink = ranked(places, Place::own, 0.5);
        double breadth = ranked(places, Place::breadth, USUAL_BREADTH);
        double[] x = new double[count];
        double[] y = new double[count];
        int alone = 0;
        for (int i = 0; i < count; i++) {
            if (isAlone(places[i], ink, breadth)) {
                x[alone] = along[i];
                y[alone++] = places[i].centre;
            }
        }
        return line(Arrays.copyOf(x, alone), Arrays.copyOf(y, alone), count, ink, expected)
                .filter(fit -> Math.abs(fit.offset) < FARTHEST_OFF
                        && Math.abs(fit.slope) * found.length() / 2 < MOST_TURNED);
    }

    private static boolean isAlone(Place place, double ink, double breadth) {
        return place.own > LEAST_OWN * ink
                && place.own < MOST_OWN * ink
                && place.beside < MOST_BESIDE * ink
                && place.breadth < WIDEST * breadth;
    }

    private static double ranked(Place[] places, ToDoubleFunction<Place> value, double share) {
        double[] sorted = Arrays.stream(places).mapToDouble(value).sorted().toArray();
        return sorted[(int) (sorted.length * share)];
    }

    /** A line through the places in which those far off count little. */
    private static Optional<Fit> line(double[] x, double[] y, int stations, double ink, Fit expected) {
        double offset = expected.offset;
        double slope = expected.slope;
        double scatter = FIRST_SCATTER;
        double deviation = 0;
        for (int turn = 0; turn < TURNS; turn++) {
            double w = 0, wx = 0, wy = 0, wxx = 0, wxy = 0;
            for (int i = 0; i < x.length; i++) {
                double weight = weight(y[i] - offset - slope * x[i], scatter);
                w += weight;
                wx += weight * x[i];
                wy += weight * y[i];
                wxx += weight * x[i] * x[i];
                wxy += weight * x[i] * y[i];
            }
            double spread = w * wxx - wx * wx;
            if (x.length < FEWEST_STATIONS || spread <= 0) {
                return Optional.empty();
            }
            slope = (w * wxy - wx * wy) / spread;
            offset = (wy - slope * wx) / w;
            double residual = residual(x, y, offset, slope, scatter);
            double reach = Math.sqrt(spread / w / x.length);
            deviation = residual / reach / Math.sqrt(Math.max(1, x.length * STATION / WAVER));
            scatter = Math.max(LEAST_SCATTER, OUTLYING * residual);
        }
        return Optional.of(new Fit(offset, slope, deviation, x.length, stations, ink));
    }

    private static double residual(double[] x, double[] y, double offset, double slope, double scatter) {
        double squares = 0;
        double weights = 0;
        for (int i = 0; i < x.length; i++) {
            double off = y[i] - offset - slope * x[i];
            double weight = weight(off, scatter);
            squares += weight * off * off;
            weights += weight;
        }
        return Math.sqrt(squares / weights);
    }

    private static double weight(double off, double scatter) {
        double distance = off / scatter;
        double weight = 1 / (1 + distance * distance);
        return weight * weight;
    }

    /** Where the stroke ends in one direction. */
    private double end(Segment found, double start, int outwards, Fit fit) {
        double last = start;
        double at = start;
        double gap = 0;
        while (gap < LONGEST_GAP && Math.abs(at - start) < FARTHEST_ON) {
            at += outwards * STATION;
            Place place = place(found, at, fit.at(at));
            if (place.own > GOES_ON_INK * fit.ink && Math.abs(place.centre - fit.at(at)) < GOES_ON) {
                gap = 0;
                last = at;
            } else {
                gap += STATION;
            }
        }
        return last;
    }

    private Place place(Segment found, double along, double expected) {
        Vector across = found.line().direction().leftNormal();
        double[] profile = refit.profile(found.midpoint().plus(found.vector().unit().times(along)), across);
        double centre = centre(profile, expected);
        double own = 0;
        double left = 0;
        double right = 0;
        double moment = 0;
        for (int i = 0; i < profile.length; i++) {
            double off = LineRefit.across(i) - centre;
            if (Math.abs(off) <= OWN) {
                own += profile[i];
                moment += profile[i] * off * off;
            } else if (off < 0 && off > -BESIDE) {
                left += profile[i];
            } else if (off > 0 && off < BESIDE) {
                right += profile[i];
            }
        }
        return new Place(centre, own, Math.max(left, right), own > 0 ? Math.sqrt(moment / own) : 0);
    }

    /** The centre of the ink under a window that follows it. */
    private static double centre(double[] profile, double expected) {
        double centre = expected;
        for (int turn = 0; turn < 3 && Math.abs(centre - expected) <= LOST; turn++) {
            double sum = 0;
            double moment = 0;
            for (int i = 0; i < profile.length; i++) {
                double off = (LineRefit.across(i) - centre) / OWN;
                if (Math.abs(off) <= 1) {
                    double weight = (1 - off * off) * profile[i];
                    sum += weight;
                    moment += weight * LineRefit.across(i);
                }
            }
            if (sum <= 0) {
                return expected;
            }
            centre = moment / sum;
        }
        return Math.abs(centre - expected) > LOST ? expected : centre;
    }
}
