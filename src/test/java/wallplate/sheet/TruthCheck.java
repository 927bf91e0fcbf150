package wallplate.sheet;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import wallplate.geometry.Angles;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.page.LevelDirection;
import wallplate.sheet.page.RuledLine;

/** Compares what the reader makes of test sheets with how they were really drawn and captured. */
final class TruthCheck {

    /** Shorter lines than these, in millimetres, the reader does not ask either, nor lines that are farther off, in degrees. */
    private static final double SHORTEST_TOLD = 5;

    private static final double FAMILY = 2.5;

    private TruthCheck() {}

    /**
     * How far one read page is from the truth.
     *
     * @param rotationDegrees the T-square's level direction on the page
     * @param ownLevelDegrees the mean direction, on the page, of the long level lines as the learner drew them, which lie
     *     off the T-square; not a number where none was drawn
     * @param toldDegrees the level that the drawn lines' true directions give by the reader's own rule: what no better
     *     seeing can mend
     * @param scalePercent the bar as drawn on the page against its nominal length
     * @param stretchPercent upright scale against level scale
     * @param placeMm largest distance of the drawing's line ends from a best similarity fit
     * @param barMm largest distance of the bar's ends from the true ones
     */
    record Errors(
            double rotationDegrees,
            double ownLevelDegrees,
            double toldDegrees,
            double scalePercent,
            double stretchPercent,
            double placeMm,
            double barMm,
            boolean upright) {}

    record Outcome(TruthSheet sheet, SheetReading reading, List<Errors> errors, long millis) {

        boolean readable() {
            return reading instanceof SheetReading.Readable;
        }
    }

    static Outcome check(TruthSheet sheet) {
        List<SheetReading> readings = new ArrayList<>();
        long[] spent = new long[1];
        try {
            ScanFile.forEachPage(sheet.scan(), page -> {
                long start = System.nanoTime();
                readings.add(new SheetReader().read(page, sheet.format()));
                spent[0] += System.nanoTime() - start;
            });
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        SheetReading reading = readings.get(0);
        List<Errors> errors = reading instanceof SheetReading.Readable readable && !sheet.hopeless()
                ? List.of(errors(sheet, readable.page()))
                : List.of();
        return new Outcome(sheet, reading, errors, spent[0] / 1_000_000);
    }

    static Errors errors(TruthSheet sheet, LevelPage page) {
        List<Segment> lines = sheet.lines();
        double left = Double.MAX_VALUE, right = -Double.MAX_VALUE, low = Double.MAX_VALUE, high = -Double.MAX_VALUE;
        for (Segment line : lines) {
            left = Math.min(left, Math.min(line.start().x(), line.end().x()));
            right = Math.max(right, Math.max(line.start().x(), line.end().x()));
            low = Math.min(low, Math.min(line.start().y(), line.end().y()));
            high = Math.max(high, Math.max(line.start().y(), line.end().y()));
        }
        Point middle = new Point((left + right) / 2, (low + high) / 2);
        Vector level = Vector.atDegrees(sheet.tiltDegrees());
        double halfWidth = (right - left) / 2;
        double halfHeight = (high - low) / 2;
        Vector along = onPage(sheet, page, middle.plus(level.times(halfWidth)))
                .minus(onPage(sheet, page, middle.plus(level.times(-halfWidth))));
        Vector up = level.leftNormal();
        Vector across = onPage(sheet, page, middle.plus(up.times(halfHeight)))
                .minus(onPage(sheet, page, middle.plus(up.times(-halfHeight))));
        double levelScale = along.length() / (2 * halfWidth);
        double uprightScale = across.length() / (2 * halfHeight);
        double scale = Double.NaN;
        double bar = Double.NaN;
        if (sheet.hasBar()) {
            Segment drawn = new Segment(
                    onPage(sheet, page, sheet.bar().start()),
                    onPage(sheet, page, sheet.bar().end()));
            double want = page.calibration().source() == Calibration.Source.REFERENCE_BAR
                    ? sheet.format().referenceBarMm()
                    : sheet.barTrueMm();
            scale = 100 * (drawn.length() / want - 1);
            bar = page.bar()
                    .map(found -> Math.max(
                            found.start().distanceTo(drawn.start()), found.end().distanceTo(drawn.end())))
                    .orElse(Double.NaN);
        }
        return new Errors(
                along.angleDegrees(),
                along.angleDegrees()
                        + sheet.longLevelDegrees().orElse(Double.NaN)
                        - sheet.tiltDegrees(),
                toldLevel(sheet) - sheet.tiltDegrees(),
                scale,
                100 * (uprightScale / levelScale - 1),
                similarityResidual(sheet, page, lines),
                bar,
                Math.abs(along.angleDegrees()) < 45 && along.cross(across) > 0);
    }

    private static double toldLevel(TruthSheet sheet) {
        List<RuledLine> level = new ArrayList<>();
        List<RuledLine> upright = new ArrayList<>();
        for (Segment line : sheet.straightLines()) {
            double off = Angles.between(line.inclinationDegrees(), sheet.tiltDegrees());
            if (line.length() > SHORTEST_TOLD && Math.min(off, 90 - off) < FAMILY) {
                (off < 45 ? level : upright).add(new RuledLine(line, 0));
            }
        }
        return LevelDirection.of(level, upright, sheet.tiltDegrees()).tiltDegrees();
    }

    private static Point onPage(TruthSheet sheet, LevelPage page, Point drawn) {
        return page.toScan().inverse().apply(sheet.toPixels(drawn));
    }

    private static double similarityResidual(TruthSheet sheet, LevelPage page, List<Segment> lines) {
        List<Point> from = new ArrayList<>();
        List<Point> to = new ArrayList<>();
        for (Segment line : lines) {
            for (Point point : List.of(line.start(), line.end())) {
                from.add(point);
                to.add(onPage(sheet, page, point));
            }
        }
        Point a = mean(from);
        Point b = mean(to);
        double dot = 0, cross = 0, squares = 0;
        for (int i = 0; i < from.size(); i++) {
            Vector p = from.get(i).minus(a);
            Vector q = to.get(i).minus(b);
            dot += p.dot(q);
            cross += p.cross(q);
            squares += p.dot(p);
        }
        double c = dot / squares;
        double s = cross / squares;
        double worst = 0;
        for (int i = 0; i < from.size(); i++) {
            Vector p = from.get(i).minus(a);
            Vector q = to.get(i).minus(b);
            worst = Math.max(worst, Math.hypot(q.x() - c * p.x() + s * p.y(), q.y() - s * p.x() - c * p.y()));
        }
        return worst;
    }

    private static Point mean(List<Point> points) {
        return new Point(
                points.stream().mapToDouble(Point::x).average().orElse(0),
                points.stream().mapToDouble(Point::y).average().orElse(0));
    }

    /** The value below which the share of the values' sizes lies. */
    static double percentile(List<Double> values, double share) {
        double[] sizes = values.stream()
                .mapToDouble(Math::abs)
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        return sizes.length == 0 ? Double.NaN : sizes[Math.min(sizes.length - 1, (int) (share * sizes.length))];
    }

    static String line(Outcome outcome) {
        String name = "%-16s %-6s".formatted(
                outcome.sheet().name(),
                outcome.sheet().hopeless()
                        ? outcome.sheet().hopelessKind()
                        : outcome.sheet().photograph() ? "photo" : "scan");
        if (outcome.reading() instanceof SheetReading.Unreadable unreadable) {
            return name + " REFUSED " + outcome.millis() + " ms " + unreadable.reason();
        }
        LevelPage page = ((SheetReading.Readable) outcome.reading()).page();
        if (outcome.errors().isEmpty()) {
            return name + " READ " + page.warnings();
        }
        Errors e = outcome.errors().get(0);
        return name
                + String.format(
                        Locale.ROOT,
                        " rot %7.3f own %7.3f told %7.3f scale %7.3f (%.2f) stretch %7.3f place %6.3f bar %6.3f %s %s%s %d ms %s",
                        e.rotationDegrees(),
                        e.ownLevelDegrees(),
                        e.toldDegrees(),
                        e.scalePercent(),
                        page.calibration().uncertaintyPercent(),
                        e.stretchPercent(),
                        e.placeMm(),
                        e.barMm(),
                        e.upright() ? "" : "WRONG-WAY-UP",
                        page.photograph() ? "photo " : "",
                        page.calibration().source().word(),
                        outcome.millis(),
                        page.warnings());
    }

    /** Checks every sheet under the given folders and prints what was found, folder by folder and for all together. */
    public static void main(String[] folders) throws IOException {
        List<Outcome> all = new ArrayList<>();
        for (String folder : folders) {
            List<Outcome> outcomes = new ArrayList<>();
            for (TruthSheet sheet : TruthSheet.under(Path.of(folder))) {
                Outcome outcome = check(sheet);
                System.out.println(line(outcome));
                outcomes.add(outcome);
            }
            summarize(folder, outcomes);
            all.addAll(outcomes);
        }
        if (folders.length > 1) {
            summarize("all", all);
        }
    }

    private static void summarize(String name, List<Outcome> outcomes) {
        for (boolean photographs : new boolean[] {false, true}) {
            List<Outcome> kind = outcomes.stream()
                    .filter(o -> !o.sheet().hopeless() && o.sheet().photograph() == photographs)
                    .toList();
            List<Errors> errors =
                    kind.stream().flatMap(o -> o.errors().stream()).toList();
            System.out.printf(
                    Locale.ROOT,
                    "%s, %s: %d sheets, %d refused, %d the wrong way up; 95 %% within: rotation %.3f (told %.3f, own level"
                            + " lines %.3f), scale %.3f %%, stretch %.3f %%, place %.3f mm%n",
                    name,
                    photographs ? "photographs" : "scans",
                    kind.size(),
                    kind.stream().filter(o -> !o.readable()).count(),
                    errors.stream().filter(e -> !e.upright()).count(),
                    within(errors, Errors::rotationDegrees),
                    within(errors, Errors::toldDegrees),
                    within(errors, Errors::ownLevelDegrees),
                    within(errors, Errors::scalePercent),
                    within(errors, Errors::stretchPercent),
                    within(errors, Errors::placeMm));
        }
        System.out.printf(
                "%s, hopeless: %d, read %d%n",
                name,
                outcomes.stream().filter(o -> o.sheet().hopeless()).count(),
                outcomes.stream().filter(o -> o.sheet().hopeless() && o.readable()).count());
    }

    static double within(List<Errors> errors, ToDoubleFunction<Errors> value) {
        return percentile(errors.stream().map(value::applyAsDouble).toList(), 0.95);
    }
}
