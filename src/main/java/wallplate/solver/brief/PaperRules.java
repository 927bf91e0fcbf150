package wallplate.solver.brief;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import wallplate.geometry.Point;
import wallplate.solver.Advice;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.task.PlainNumber;
import wallplate.task.Scale;
import wallplate.task.SheetFormat;

/** Scale, sheet and pencil: what can be drawn and read on paper. */
final class PaperRules implements BriefRule {

    private static final Set<Double> ISO_REDUCTIONS =
            Set.of(1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0);

    private static final String ISO_SCALES = "ISO 5455:1979, clause 5.1, recommended scales";
    private static final String DETAIL_SCALES =
            "LibreCAD user manual, common drawing scales: details and wall sections at"
                    + " 1:10, building sections at 1:20";
    private static final String ISO_LINES = "ISO 128:1982: parallel lines never closer than 0.7 mm";
    private static final String ISO_FRAME =
            "ISO 5457:1999: a border of 20 mm on the filing edge and 10 mm elsewhere; the bar's strip is this"
                    + " program's own";

    private static final double CLOSEST_LINES = 0.7;

    private static final double FILING_BORDER = 20;
    private static final double BORDER = 10;

    /** The lowest part of a sheet, which the reference bar and the title block take up. */
    private static final double BAR_STRIP = 45;

    /** How much of the wall has to be seen below its top. */
    private static final double WALL_SHOWN = 25;

    @Override
    public Stream<Advice> advice(ExpectedDrawing drawing) {
        List<Advice> advice = new ArrayList<>();
        scale(drawing.task().scale(), advice);
        fit(drawing, advice);
        thin(drawing, advice);
        return advice.stream();
    }

    private static void scale(Scale scale, List<Advice> advice) {
        if (!ISO_REDUCTIONS.contains(scale.denominator())) {
            advice.add(new Advice(
                    "scale",
                    scale + " is not among the recommended scales (1:1, 1:2, 1:5, 1:10, 1:20, 1:50, ...).",
                    ISO_SCALES));
        } else if (scale.denominator() > 20) {
            advice.add(new Advice("scale", scale + " is small for a detail: 1:10 or 1:20 is usual.", DETAIL_SCALES));
        }
    }

    private static void fit(ExpectedDrawing drawing, List<Advice> advice) {
        SheetFormat sheet = drawing.task().sheet();
        double width = extent(drawing, true);
        double height = extent(drawing, false);
        double roomWide = sheet.widthMm() - FILING_BORDER - BORDER;
        double roomHigh = sheet.heightMm() - BORDER - BAR_STRIP;
        if (width > roomWide || height > roomHigh) {
            advice.add(new Advice(
                    "sheet.size",
                    ("The drawing is %s x %s mm on paper; %s %s leaves %s x %s mm inside its frame"
                                    + " and above the reference bar.")
                            .formatted(
                                    whole(width),
                                    whole(height),
                                    sheet.name(),
                                    sheet.landscape() ? "landscape" : "portrait",
                                    whole(roomWide),
                                    whole(roomHigh)),
                    ISO_FRAME));
        }
    }

    /**
     * The drawing's extent. Of the wall only as much counts as has to be seen: it is broken off where there is
     * room.
     */
    private static double extent(ExpectedDrawing drawing, boolean level) {
        List<Double> places = new ArrayList<>();
        for (DrawnLine line : drawing.lines()) {
            boolean wall = line.part().equals("wall");
            for (Point point : List.of(line.segment().start(), line.segment().end())) {
                places.add(level ? point.x() : wall ? Math.max(point.y(), -WALL_SHOWN) : point.y());
            }
        }
        return places.stream().mapToDouble(Double::doubleValue).max().orElse(0)
                - places.stream().mapToDouble(Double::doubleValue).min().orElse(0);
    }

    private static void thin(ExpectedDrawing drawing, List<Advice> advice) {
        for (Expected expected : drawing.values()) {
            boolean size = expected.key().matches(".*\\.(thickness|width|depth)");
            if (size && expected instanceof Expected.Length length && length.exactMm() < CLOSEST_LINES) {
                advice.add(new Advice(
                        expected.key(),
                        "%s mm is %s mm on paper: two lines cannot be kept apart there."
                                .formatted(PlainNumber.text(length.realMm()), PlainNumber.text(length.exactMm(), 2)),
                        ISO_LINES));
            }
        }
    }

    private static String whole(double mm) {
        return PlainNumber.text(mm, 0);
    }
}
