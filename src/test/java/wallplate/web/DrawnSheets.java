package wallplate.web;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import wallplate.assessment.AssessedSheet;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.marking.Guideline;
import wallplate.marking.Marker;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;
import wallplate.sheet.Calibration;
import wallplate.sheet.InkImage;
import wallplate.sheet.LevelPage;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;
import wallplate.task.EavesSide;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/**
 * Assessed sheets for the tests of pages and records: the expected drawing as picture and as strokes, with values that
 * miss by a little, by much, or cannot be told, drawn from a seed. No scan is read for them.
 */
public final class DrawnSheets {

    private static final double PIXELS_PER_MM = 8;

    /** An invented task. */
    private static final String TASK =
            """
            id: lookout-eaves
            title: Section through the eaves of the lookout
            detail: eaves-section
            scale: "1:20"
            eaves: left
            pitch: 24
            wall: {thickness: 220, plate-flush: inner}
            wall-plate: {width: 114, depth: 38}
            tie-beam: {depth: 114}
            rafter: {depth: 114, overhang: 460}
            support: {name: purlin, width: 50, depth: 76, spacing: 800}
            covering: {name: roof sheeting, thickness: 36, projection: 50}
            fascia: {thickness: 30, depth: 225}
            gutter: {width: 125, depth: 100}
            barge-board: {depth: 225, clearance: 20}
            ceiling: {board: 12, brander: {width: 38, depth: 38, spacing: 400}}
            posts: {width: 114, equal-spaces: 4, span: 5200, set-out-from: wall-centre}
            break-line: {inside: 2000}
            sheet: {size: A4, orientation: landscape, reference-bar: 100}
            """;

    private DrawnSheets() {}

    public static String aTaskFile() {
        return TASK;
    }

    public static DrawingTask aTask() {
        return ((TaskReading.Accepted) TaskFile.read(TASK)).task();
    }

    public static AssessedSheet.Read aSheet(DrawingTask task, String scan, long seed) {
        ExpectedDrawing expected = Solver.solve(task);
        Map<String, List<Segment>> parts = parts(expected);
        MeasuredSheet measured =
                new MeasuredSheet(measurements(expected, parts, new Random(seed)), parts, Optional.of(heel(expected)));
        List<String> warnings =
                seed % 4 == 3 ? List.of("The paper's edges and the bar differ by 1.8 %: the bar was used.") : List.of();
        LevelPage page = new LevelPage(
                ink(task, parts),
                new Upright(task.sheet().heightMm()),
                PIXELS_PER_MM,
                0.4,
                false,
                new Calibration(Calibration.Source.REFERENCE_BAR, 100, 0.2, 0.1),
                Optional.of(Segment.between(25, 20, 125, 20)),
                warnings);
        return new AssessedSheet.Read(
                scan, 1, expected, page, measured, new Marker().mark(Guideline.defaultFor(expected), expected, measured));
    }

    /** Where the heel point comes to lie, so that the whole drawing stands on the sheet. */
    private static Point heel(ExpectedDrawing expected) {
        boolean mirrored = expected.task().eaves() == EavesSide.RIGHT;
        double left = expected.lines().stream()
                .mapToDouble(line -> Math.min(side(line, mirrored).start().x(), side(line, mirrored).end().x()))
                .min()
                .orElseThrow();
        double low = expected.lines().stream()
                .mapToDouble(line -> Math.min(line.segment().start().y(), line.segment().end().y()))
                .min()
                .orElseThrow();
        return new Point(35 - left, 45 - low);
    }

    private static Map<String, List<Segment>> parts(ExpectedDrawing expected) {
        boolean mirrored = expected.task().eaves() == EavesSide.RIGHT;
        Point heel = heel(expected);
        Map<String, List<Segment>> parts = new TreeMap<>();
        for (DrawnLine line : expected.lines()) {
            Segment placed = moved(side(line, mirrored), heel.x(), heel.y());
            parts.computeIfAbsent(line.part() + "." + line.edge(), edge -> new ArrayList<>()).add(placed);
        }
        return parts;
    }

    private static Segment side(DrawnLine line, boolean mirrored) {
        return mirrored ? line.segment().mirrored() : line.segment();
    }

    private static Segment moved(Segment segment, double right, double up) {
        return Segment.between(
                segment.start().x() + right, segment.start().y() + up, segment.end().x() + right, segment.end().y() + up);
    }

    private static List<Measurement> measurements(
            ExpectedDrawing expected, Map<String, List<Segment>> parts, Random random) {
        List<Measurement> measurements = new ArrayList<>();
        for (Expected value : expected.values()) {
            String part = value.key().startsWith("roof.") ? "rafter" : value.key().substring(0, value.key().indexOf('.'));
            Segment[] evidence = parts.entrySet().stream()
                    .filter(entry -> entry.getKey().startsWith(part + "."))
                    .map(entry -> entry.getValue().get(0))
                    .limit(2)
                    .toArray(Segment[]::new);
            measurements.add(Measurement.of(value.key(), finding(value, random), evidence));
        }
        return measurements;
    }

    private static Finding finding(Expected value, Random random) {
        double chance = random.nextDouble();
        if (chance < 0.05) {
            return Finding.Uncertain.because(
                    "Two lines lie where this edge should be; the program cannot tell which one is meant.");
        }
        double miss = chance < 0.2 ? 3 : 0.1;
        if (value instanceof Expected.Length length) {
            return new Finding.Quantity(length.exactMm() + miss * random.nextGaussian(), 0.06);
        }
        if (value instanceof Expected.Angle angle) {
            return new Finding.Quantity(angle.degrees() + miss * random.nextGaussian(), 0.05);
        }
        if (value instanceof Expected.Count count) {
            return new Finding.Count(count.number() - (chance < 0.2 ? 1 : 0));
        }
        if (value instanceof Expected.YesNo yesNo) {
            return new Finding.YesNo(yesNo.yes() == (chance > 0.2));
        }
        return new Finding.Word(((Expected.Word) value).word());
    }

    private static InkImage ink(DrawingTask task, Map<String, List<Segment>> parts) {
        int widthPx = (int) Math.round(task.sheet().widthMm() * PIXELS_PER_MM);
        int heightPx = (int) Math.round(task.sheet().heightMm() * PIXELS_PER_MM);
        BufferedImage picture = new BufferedImage(widthPx, heightPx, BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D pencil = picture.createGraphics();
        pencil.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pencil.setColor(new Color(170, 170, 170));
        pencil.setStroke(new BasicStroke((float) (0.4 * PIXELS_PER_MM)));
        parts.values()
                .forEach(segments -> segments.forEach(segment -> pencil.draw(new Line2D.Double(
                        segment.start().x() * PIXELS_PER_MM,
                        heightPx - segment.start().y() * PIXELS_PER_MM,
                        segment.end().x() * PIXELS_PER_MM,
                        heightPx - segment.end().y() * PIXELS_PER_MM))));
        pencil.dispose();
        byte[] ink = ((DataBufferByte) picture.getRaster().getDataBuffer()).getData();
        return new InkImage(widthPx, heightPx, PIXELS_PER_MM, ink);
    }

    /** From page millimetres to the pixels of the picture drawn here. */
    private record Upright(double heightMm) implements PlaneMap {

        @Override
        public Point apply(Point point) {
            return new Point(point.x() * PIXELS_PER_MM, (heightMm - point.y()) * PIXELS_PER_MM);
        }

        @Override
        public PlaneMap inverse() {
            throw new UnsupportedOperationException("no test goes back from pixels");
        }
    }
}
