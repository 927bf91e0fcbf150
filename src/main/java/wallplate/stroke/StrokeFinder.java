package wallplate.stroke;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.sheet.InkImage;

/**
 * Finds the pencil lines of a page that run in about a given direction.
 *
 * <ol>
 *   <li>The page is read in that direction, in cells half a millimetre long and a tenth wide.
 *   <li>In each column of cells the ridges are taken: places darker than both sides.
 *   <li>Ridges are followed from column to column along a straight line; a gap of a few millimetres is bridged.
 *   <li>Tracks that continue one another, or lie side by side closer than two lines can be drawn, become one stroke.
 * </ol>
 *
 * <p>A line turned more than about two degrees against the direction comes out in pieces; ask for its own direction.
 * Lettering gives short strokes. The ridges are those of Steger, "An unbiased detector of curvilinear structures",
 * IEEE TPAMI 20(2), 1998, simplified for a known direction.
 */
public final class StrokeFinder {

    private static final int HEAVY_HALF_ROWS = 3;

    private final StrokeSettings settings;

    public StrokeFinder(StrokeSettings settings) {
        this.settings = settings;
    }

    /**
     * The strokes in about this direction, longest first.
     *
     * @param directionDegrees anticlockwise from the page's x axis
     */
    public List<Stroke> find(InkImage ink, double directionDegrees) {
        ParallelScan scan = ParallelScan.of(ink, directionDegrees);
        List<Track> tracks = merge(follow(scan));
        List<Stroke> strokes = new ArrayList<>();
        for (Track track : tracks) {
            if (track.columnsSpanned() * ParallelScan.STEP_MM >= settings.shortestMm()) {
                strokes.add(stroke(scan, track));
            }
        }
        strokes.sort(Comparator.comparingDouble(Stroke::length)
                .reversed()
                .thenComparing(stroke -> stroke.centreLine().start().y())
                .thenComparing(stroke -> stroke.centreLine().start().x()));
        return strokes;
    }

    private List<Track> follow(ParallelScan scan) {
        List<Track> done = new ArrayList<>();
        List<Track> open = new ArrayList<>();
        float[] profile = new float[scan.rows()];
        int longestGap = (int) Math.round(settings.bridgedGapMm() / ParallelScan.STEP_MM);
        for (int column = 0; column < scan.columns(); column++) {
            scan.profile(column, profile);
            List<Ridge> ridges = ridges(profile);
            assign(open, ridges, column);
            int now = column;
            open.removeIf(track -> {
                boolean over = now - track.lastColumn() > longestGap || track.isSpent(now);
                if (over) {
                    done.add(track);
                }
                return over;
            });
        }
        done.addAll(open);
        done.removeIf(track -> track.size() < settings.fewestRidges());
        return done;
    }

    private record Ridge(double row, double ink) {}

    /** The ridges of ordinary lines, and those of heavy ones whose flat top hides them from the first look. */
    private List<Ridge> ridges(float[] profile) {
        List<Ridge> ridges = ridges(profile, 6);
        int fine = ridges.size();
        for (Ridge heavy : ridges(broadened(profile), 11)) {
            boolean known = false;
            for (int r = 0; r < fine; r++) {
                known |= Math.abs(ridges.get(r).row() - heavy.row()) < HEAVY_HALF_ROWS + 3;
            }
            if (!known) {
                ridges.add(heavy);
            }
        }
        return ridges;
    }

    private static float[] broadened(float[] profile) {
        float[] broad = new float[profile.length];
        float sum = 0;
        int width = 2 * HEAVY_HALF_ROWS + 1;
        for (int row = 0; row < profile.length; row++) {
            sum += profile[row];
            if (row >= width) {
                sum -= profile[row - width];
            }
            if (row >= width - 1) {
                broad[row - HEAVY_HALF_ROWS] = sum / width;
            }
        }
        return broad;
    }

    private List<Ridge> ridges(float[] profile, int reach) {
        List<Ridge> ridges = new ArrayList<>();
        for (int row = reach; row < profile.length - reach; row++) {
            float ink = profile[row];
            if (ink < settings.faintestInk() || ink < profile[row - 1] || ink <= profile[row + 1]) {
                continue;
            }
            float left = ink;
            float right = ink;
            for (int away = 1; away <= reach; away++) {
                left = Math.min(left, profile[row - away]);
                right = Math.min(right, profile[row + away]);
            }
            if (ink - Math.max(left, right) < settings.prominence() * ink) {
                continue;
            }
            float before = profile[row - 1];
            float after = profile[row + 1];
            float curvature = before - 2 * ink + after;
            double shift = curvature == 0 ? 0 : 0.5 * (before - after) / curvature;
            ridges.add(new Ridge(row + shift, ink));
        }
        return ridges;
    }

    /** Gives each ridge to the open track that foresees it best, and starts a new track where none does. */
    private void assign(List<Track> open, List<Ridge> ridges, int column) {
        record Pair(int track, int ridge, double distance) {}
        List<Pair> pairs = new ArrayList<>();
        for (int t = 0; t < open.size(); t++) {
            double foreseen = open.get(t).rowAt(column);
            double gate = settings.gateMm() / ParallelScan.ROW_MM * open.get(t).gateFactor(column);
            for (int r = 0; r < ridges.size(); r++) {
                double distance = Math.abs(ridges.get(r).row() - foreseen);
                if (distance <= gate) {
                    pairs.add(new Pair(t, r, distance));
                }
            }
        }
        pairs.sort(Comparator.comparingDouble(Pair::distance).thenComparingInt(Pair::track).thenComparingInt(Pair::ridge));
        boolean[] trackTaken = new boolean[open.size()];
        boolean[] ridgeTaken = new boolean[ridges.size()];
        for (Pair pair : pairs) {
            if (!trackTaken[pair.track()] && !ridgeTaken[pair.ridge()]) {
                trackTaken[pair.track()] = true;
                ridgeTaken[pair.ridge()] = true;
                Ridge ridge = ridges.get(pair.ridge());
                open.get(pair.track()).add(column, ridge.row(), ridge.ink());
            }
        }
        for (int r = 0; r < ridges.size(); r++) {
            if (!ridgeTaken[r]) {
                open.add(new Track(column, ridges.get(r).row(), ridges.get(r).ink()));
            }
        }
    }

    private List<Track> merge(List<Track> tracks) {
        List<Track> kept = new ArrayList<>();
        List<Track> bySize = new ArrayList<>(tracks);
        bySize.sort(Comparator.comparingInt(Track::size)
                .reversed()
                .thenComparingInt(Track::firstColumn)
                .thenComparingDouble(Track::meanRow));
        for (Track track : bySize) {
            boolean absorbed = false;
            for (Track longer : kept) {
                if (belongsTo(longer, track)) {
                    longer.absorb(track);
                    absorbed = true;
                    break;
                }
            }
            if (!absorbed) {
                kept.add(track);
            }
        }
        return kept;
    }

    private boolean belongsTo(Track longer, Track shorter) {
        double offsetMm = Math.max(
                        Math.abs(longer.rowAt(shorter.firstColumn()) - shorter.rowAt(shorter.firstColumn())),
                        Math.abs(longer.rowAt(shorter.lastColumn()) - shorter.rowAt(shorter.lastColumn())))
                * ParallelScan.ROW_MM;
        if (offsetMm > settings.sameLineMm()) {
            return false;
        }
        int gap = Math.max(shorter.firstColumn() - longer.lastColumn(), longer.firstColumn() - shorter.lastColumn());
        return gap * ParallelScan.STEP_MM <= settings.mergedGapMm();
    }

    private Stroke stroke(ParallelScan scan, Track track) {
        int first = track.firstColumn();
        int last = track.lastColumn();
        float[] inkAlong = new float[last - first + 1];
        int inked = 0;
        double sum = 0;
        for (int column = first; column <= last; column++) {
            float ink = scan.highest(column, track.rowAt(column));
            inkAlong[column - first] = ink;
            if (ink >= settings.faintestInk()) {
                inked++;
                sum += ink;
            }
        }
        Point start = scan.point(first - 0.5, track.rowAt(first - 0.5));
        Point end = scan.point(last + 0.5, track.rowAt(last + 0.5));
        return new Stroke(
                Segment.between(start, end),
                inked == 0 ? 0 : sum / inked,
                inked / (double) inkAlong.length,
                track.residualRows() * ParallelScan.ROW_MM,
                new InkAlong(inkAlong));
    }
}
