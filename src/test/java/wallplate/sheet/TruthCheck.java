package wallplate.sheet;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;

/** Compares what the reader makes of test sheets with how they were really drawn and captured. */
final class TruthCheck {

    private TruthCheck() {}

    /**
     * How far one read page is from the truth.
     *
     * @param rotationDegrees the drawing's own level direction on the page
     * @param scalePercent the bar as drawn on the page against its nominal length
     * @param stretchPercent upright scale against level scale
     * @param placeMm largest distance of the drawing's line ends from a best similarity fit
     * @param barMm largest distance of the bar's ends from the true ones
     */
    record Errors(
            double rotationDegrees, double scalePercent, double stretchPercent, double placeMm, double barMm, boolean upright) {}

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
                scale,
                100 * (uprightScale / levelScale - 1),
                similarityResidual(sheet, page, lines),
                bar,
                Math.abs(along.angleDegrees()) < 45 && along.cross(across) > 0);
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
                        " rot %7.3f scale %7.3f stretch %7.3f place %6.3f bar %6.3f %s %s%s %d ms %s",
                        e.rotationDegrees(),
                        e.scalePercent(),
                        e.stretchPercent(),
                        e.placeMm(),
                        e.barMm(),
                        e.upright() ? "" : "WRONG-WAY-UP",
                        page.photograph() ? "photo " : "",
                        page.calibration().source().word(),
                        outcome.millis(),
                        page.warnings());
    }

    /** Checks every sheet under the given folder and prints what was found. */
    public static void main(String[] arguments) throws IOException {
        List<Outcome> outcomes = new ArrayList<>();
        for (TruthSheet sheet : TruthSheet.under(Path.of(arguments[0]))) {
            if (arguments.length > 1 && !sheet.name().contains(arguments[1])) {
                continue;
            }
            Outcome outcome = check(sheet);
            System.out.println(line(outcome));
            outcomes.add(outcome);
        }
        for (boolean photographs : new boolean[] {false, true}) {
            List<Outcome> kind = outcomes.stream()
                    .filter(o -> !o.sheet().hopeless() && o.sheet().photograph() == photographs)
                    .toList();
            List<Errors> errors =
                    kind.stream().flatMap(o -> o.errors().stream()).toList();
            System.out.printf(
                    Locale.ROOT,
                    "%s: %d sheets, %d refused, rotation p95 %.3f, scale p95 %.3f %%, stretch p95 %.3f, place p95 %.3f, wrong way up %d%n",
                    photographs ? "photographs" : "scans",
                    kind.size(),
                    kind.stream().filter(o -> !o.readable()).count(),
                    percentile(errors.stream().map(Errors::rotationDegrees).toList(), 0.95),
                    percentile(errors.stream().map(Errors::scalePercent).toList(), 0.95),
                    percentile(errors.stream().map(Errors::stretchPercent).toList(), 0.95),
                    percentile(errors.stream().map(Errors::placeMm).toList(), 0.95),
                    errors.stream().filter(e -> !e.upright()).count());
        }
        System.out.printf(
                "hopeless: %d, read %d%n",
                outcomes.stream().filter(o -> o.sheet().hopeless()).count(),
                outcomes.stream().filter(o -> o.sheet().hopeless() && o.readable()).count());
    }
}
