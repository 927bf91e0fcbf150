package wallplate.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import wallplate.geometry.Line;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.Calibration.Source;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.codes.CodeReader;
import wallplate.sheet.opencv.InkFlattening;
import wallplate.sheet.opencv.PageWarp;
import wallplate.sheet.opencv.PunchedHoles;
import wallplate.sheet.opencv.StraightSegments;
import wallplate.sheet.page.AxisLines;
import wallplate.sheet.page.BarChoice;
import wallplate.sheet.page.BarFinder;
import wallplate.sheet.page.BarFinder.Bar;
import wallplate.sheet.page.Disc;
import wallplate.sheet.page.DrawingCheck;
import wallplate.sheet.page.Frame;
import wallplate.sheet.page.FrameLines;
import wallplate.sheet.page.GreyPage;
import wallplate.sheet.page.LevelDirection;
import wallplate.sheet.page.LineRefit;
import wallplate.sheet.page.PageMap;
import wallplate.sheet.page.PaperMask;
import wallplate.sheet.page.RoofSense;
import wallplate.sheet.page.RoughPage;
import wallplate.sheet.page.RoughPage.Kind;
import wallplate.sheet.page.RoughPage.Scale;
import wallplate.sheet.page.Sharpness;
import wallplate.sheet.page.SlopingLines;
import wallplate.sheet.page.Stretch;
import wallplate.sheet.page.Turn;
import wallplate.task.SheetFormat;

/** The reading of one page whose paper has been found in its picture. */
final class PageReading {

    private static final double ROUGH_PIXELS_PER_MM = 4;
    private static final double LEVEL_PIXELS_PER_MM = 10;
    private static final double CODE_PIXELS_PER_MM = 12;
    private static final double PRINT_RIM = 1;
    /** What lies outside the picture is as dark as a scanner's surround and taken for that. */
    private static final int OUTSIDE = 0;

    private static final double EDGE_INSET = 0.8;
    /** A hundred dots to the inch: a pencil line is one or two pixels wide. */
    private static final double LEAST_PIXELS_PER_MM = 3.9;
    /** Two scales of one page may differ by this share before it is said; the eaves page asks for it. */
    private static final double SCALES_DIFFER = 0.015;
    /** How well a learner draws a bar with a ruler and how well its ticks have a centre line, in millimetres. */
    static final double BAR_DRAWN = 0.1;
    /** How well the sides of cut paper are known, in percent: a third of a millimetre in A4. */
    private static final double PAPER_CUT_PERCENT = 0.15;

    private static final double SECOND_BAR_SHAPE = 0.7;
    /** A scanner cuts off up to half a centimetre all round; where less than this share is left, a part is missing. */
    private static final double WHOLE_SHARE = 0.93;
    /** Lines fainter than this share of the slopes' darkness say nothing about which way up the drawing is. */
    private static final double FAINT_SHARE = 0.4;

    private final Picture picture;
    private final SheetFormat format;
    private final RoughPage rough;
    private final LineRefit refit;
    private final FrameLines frames;
    private final boolean formatAlongX;
    private List<Disc> discs = List.of();

    PageReading(Picture picture, SheetFormat format, RoughPage rough) {
        this.picture = picture;
        this.format = format;
        this.rough = rough;
        this.refit = new LineRefit(picture, rough.map());
        this.frames = new FrameLines(rough.widthMm(), rough.heightMm());
        this.formatAlongX = rough.isLandscape(format) == format.landscape();
    }

    SheetReading read() {
        double pixelsPerMm = rough.map().pixelsPerMmAt(new Point(rough.widthMm() / 2, rough.heightMm() / 2));
        if (pixelsPerMm < LEAST_PIXELS_PER_MM) {
            return new SheetReading.Unreadable(Refusals.tooCoarse(pixelsPerMm, isPhotograph()));
        }
        GreyPage grey =
                PageWarp.warp(picture, rough.map(), rough.widthMm(), rough.heightMm(), ROUGH_PIXELS_PER_MM, OUTSIDE);
        discs = discs(grey);
        InkImage ink = InkFlattening.flatten(grey, mask(rough.paper(), discs), isPhotograph());
        List<Segment> segments =
                StraightSegments.find(new GreyPage(ink.widthPx(), ink.heightPx(), ink.pixelsPerMm(), ink.bytes()));
        Sight sight = likeliest(
                AxisLines.tilts(segments).stream().map(tilt -> sight(tilt, segments, ink)).toList());
        return sight.refusal().isPresent() ? refused(ink, sight.refusal().get()) : read(ink, sight);
    }

    /**
     * What was found on the rough page with its axes taken to lie in one direction.
     *
     * @param chosen the bar, where there is one
     * @param turn which way up the sheet lies, as far as the page could be understood
     * @param refusal why the page cannot be read so; empty where it can
     */
    private record Sight(
            AxisLines all,
            AxisLines drawn,
            Bars bars,
            Optional<BarChoice.Choice> chosen,
            Turn turn,
            Optional<String> refusal) {}

    /** The first direction unless only the second one makes a section of the page, or one with a bar. */
    private static Sight likeliest(List<Sight> sights) {
        return sights.stream()
                .max(Comparator.comparingInt((Sight sight) -> sight.refusal.isPresent() ? 0 : sight.chosen.isPresent() ? 2 : 1)
                        .thenComparing(Comparator.comparingInt(sights::indexOf).reversed()))
                .orElseThrow();
    }

    private Sight sight(double tilt, List<Segment> segments, InkImage ink) {
        AxisLines all = AxisLines.along(tilt, segments, refit);
        AxisLines drawn = frames.without(all);
        Optional<SlopingLines> slopes = SlopingLines.among(segments, tilt, refit);
        Optional<String> noDrawing = DrawingCheck.ofPage(segments, drawn, slopes);
        if (noDrawing.isPresent()) {
            return new Sight(all, drawn, new Bars(List.of(), List.of()), Optional.empty(), Turn.UPRIGHT, noDrawing);
        }
        Bars bars = bars(ink, drawn);
        BarChoice choice = new BarChoice(
                rough.widthMm(),
                rough.heightMm(),
                formatAlongX,
                rough.scale() == Scale.MARKS,
                turn -> shareUnder(drawn, slopes, turn));
        Optional<BarChoice.Choice> alone = choice.best(bars.alongX, bars.alongY);
        Optional<BarChoice.Choice> chosen = alone.isPresent() ? alone : joined(choice, ink, all);
        Turn turn = chosen.map(BarChoice.Choice::turn).orElseGet(choice::withoutBar);
        return new Sight(all, drawn, bars, chosen, turn, DrawingCheck.ofSection(drawn, slopes, turn));
    }

    /** A blurred picture hides what else is missing. */
    private SheetReading refused(InkImage ink, String reason) {
        return new SheetReading.Unreadable(Sharpness.isBlurred(ink) ? Refusals.blurred(isPhotograph()) : reason);
    }

    private boolean isPhotograph() {
        return rough.kind() == Kind.PHOTOGRAPH;
    }

    private PaperMask mask(List<Line> edges, List<Disc> discs) {
        return new PaperMask(edges, EDGE_INSET, discs, !isPhotograph());
    }

    /** Holes, and what is printed on the project's own sheets, on the rough page. */
    private List<Disc> discs(GreyPage grey) {
        List<Disc> discs = new ArrayList<>(PunchedHoles.find(grey));
        if (rough.scale() == Scale.MARKS) {
            PrintedMarks printed = PrintedMarks.of(format);
            double markRadius = PrintedMarks.MARK_SIZE / Math.sqrt(2) + PRINT_RIM;
            double codeRadius = printed.code().size() / Math.sqrt(2) + PRINT_RIM;
            printed.marks().forEach(mark -> discs.add(new Disc(mark.centre(), markRadius)));
            discs.add(new Disc(printed.code().centre(), codeRadius));
        }
        return discs;
    }

    private SheetReading read(InkImage ink, Sight sight) {
        Optional<Bar> bar = sight.chosen.map(BarChoice.Choice::bar);
        Stretch stretch = stretch(frames.frame(sight.all), sight.turn, bar, sight.bars);
        Levelling levelling = new Levelling(sight.turn, bar, stretch, frames.ruledByTheDrawing(sight.drawn));
        return bar.isEmpty() && !rough.isTrueToSize()
                ? withoutScale(ink, levelling)
                : new SheetReading.Readable(levelling.page());
    }

    /** Everything is there but millimetres: the page is kept level, so that a person can show its bar. */
    private SheetReading withoutScale(InkImage ink, Levelling levelling) {
        return Sharpness.isBlurred(ink)
                ? new SheetReading.Unreadable(Refusals.blurred(isPhotograph()))
                : new SheetReading.Unreadable(
                        Refusals.nothingToMeasureBy(format.referenceBarMm(), isPhotograph()),
                        Optional.empty(),
                        Optional.of(levelling.page()));
    }

    private record Bars(List<Bar> alongX, List<Bar> alongY) {

        /** The factor that makes an upright bar as long as the level one, where there is one. */
        Optional<Double> second(Bar level, Turn turn) {
            List<Bar> upright = turn.isLevelAlongX() ? alongY : alongX;
            return upright.stream()
                    .filter(bar -> bar.shape() > SECOND_BAR_SHAPE)
                    .max(Comparator.comparingDouble(Bar::shape))
                    .map(bar -> level.segment().length() / bar.segment().length())
                    .map(factor -> turn.isLevelAlongX() ? factor : 1 / factor);
        }
    }

    private Bars bars(InkImage ink, AxisLines drawn) {
        BarFinder finder = barFinder(ink);
        return new Bars(finder.among(drawn.alongX()), finder.among(drawn.alongY()));
    }

    /** A bar in one line with the frame or the title block, looked for where none stands alone. */
    private Optional<BarChoice.Choice> joined(BarChoice choice, InkImage ink, AxisLines all) {
        BarFinder finder = barFinder(ink);
        return choice.best(finder.amongJoined(all.alongX()), finder.amongJoined(all.alongY()));
    }

    private BarFinder barFinder(InkImage ink) {
        double tolerance =
                rough.scale() == Scale.FILLED_PICTURE ? BarFinder.GUESSED_SCALE : BarFinder.KNOWN_SCALE;
        return new BarFinder(ink, refit, format.referenceBarMm(), tolerance);
    }

    /**
     * How much of the drawing's level and upright lines lies under its slopes, for a turn. Folds, streaks and what was
     * rubbed out are much fainter than the slopes and not asked.
     */
    private static double shareUnder(AxisLines drawn, Optional<SlopingLines> slopes, Turn turn) {
        List<LineRefit.Fitted> sloping = slopes.map(SlopingLines::lines).orElse(List.of());
        double darkness = sloping.stream().mapToDouble(LineRefit.Fitted::darkness).average().orElse(0);
        List<Segment> lines = Stream.concat(drawn.alongX().stream(), drawn.alongY().stream())
                .filter(line -> line.darkness() > FAINT_SHARE * darkness)
                .map(LineRefit.Fitted::segment)
                .toList();
        return RoofSense.shareUnder(turn, sloping.stream().map(LineRefit.Fitted::segment).toList(), lines);
    }

    private Stretch stretch(Optional<Frame> frame, Turn turn, Optional<Bar> bar, Bars bars) {
        double scale = bar.map(found -> format.referenceBarMm() / found.segment().length())
                .orElse(1.0);
        Optional<Double> printed =
                frame.flatMap(found -> found.stretch(turn, scale, format.widthMm(), format.heightMm()));
        return Stretch.of(rough, printed, bar.flatMap(found -> bars.second(found, turn)));
    }

    /** What the printed code says, which stands at a known place beside the marks. */
    private Optional<SheetCode> code() {
        if (rough.scale() != Scale.MARKS) {
            return Optional.empty();
        }
        PrintedMarks.CodePlace place = PrintedMarks.of(format).code();
        double side = place.size() + 2 * PrintedMarks.CODE_QUIET_ZONE;
        PageMap corner = PageMap.affine(
                1, 0, place.centre().x() - side / 2, 0, 1, place.centre().y() - side / 2);
        GreyPage cutOut = PageWarp.warp(picture, rough.map().after(corner), side, side, CODE_PIXELS_PER_MM, 255);
        return CodeReader.read(cutOut);
    }

    /** Turns, stretches and scales the rough page to the level one. */
    private final class Levelling {

        private final Turn turn;
        private final Optional<Bar> bar;
        private final Stretch stretch;
        private final LevelDirection level;

        Levelling(Turn turn, Optional<Bar> bar, Stretch stretch, AxisLines drawn) {
            this.turn = turn;
            this.bar = bar;
            this.stretch = stretch;
            this.level = LevelDirection.of(
                    drawn.alongX().stream().map(this::stretched).toList(),
                    drawn.alongY().stream().map(this::stretched).toList(),
                    drawn.tiltDegrees());
        }

        private LineRefit.Fitted stretched(LineRefit.Fitted line) {
            return new LineRefit.Fitted(
                    stretched(line.segment()), line.darkness(), line.coverage(), line.residual());
        }

        private Segment stretched(Segment segment) {
            return Segment.between(
                    segment.start().x(),
                    segment.start().y() * stretch.factor(),
                    segment.end().x(),
                    segment.end().y() * stretch.factor());
        }

        LevelPage page() {
            double scale = bar.map(found -> format.referenceBarMm()
                            / stretched(found.segment()).length())
                    .orElse(1.0);
            Sheet sheet = sheet(level.tiltDegrees() + turn.degrees(), scale);
            PageMap toScan = rough.map().after(sheet.toRough);
            GreyPage grey =
                    PageWarp.warp(picture, toScan, sheet.widthMm, sheet.heightMm, LEVEL_PIXELS_PER_MM, OUTSIDE);
            PlaneMap fromRough = sheet.toRough.inverse();
            List<Line> edges = rough.paper().stream()
                    .map(edge -> fromRough.apply(edge.between(0, 100)).line())
                    .toList();
            InkImage ink = InkFlattening.flatten(
                    grey,
                    mask(edges, discs.stream().map(disc -> disc.on(fromRough)).toList()),
                    isPhotograph());
            return new LevelPage(
                    ink,
                    toScan,
                    toScan.pixelsPerMmAt(new Point(sheet.widthMm / 2, sheet.heightMm / 2)),
                    rotationInPicture(toScan, sheet),
                    isPhotograph(),
                    calibration(scale),
                    bar.map(found -> rightwards(fromRough.apply(found.segment()))),
                    warnings(scale),
                    code(),
                    isCutOff(scale));
        }

        /** How far level lines are turned in the picture as handed in, anticlockwise, quarter turns left out. */
        private static double rotationInPicture(PageMap toScan, Sheet sheet) {
            Point middle = new Point(sheet.widthMm / 2, sheet.heightMm / 2);
            Vector seen = toScan.apply(middle.plus(new Vector(1, 0))).minus(toScan.apply(middle));
            // Pixels run downwards, so the angle as seen has the other sign.
            double angle = -seen.angleDegrees();
            return angle - 90 * Math.round(angle / 90);
        }

        private static Segment rightwards(Segment segment) {
            return segment.vector().x() < 0 ? segment.reversed() : segment;
        }

        private Calibration calibration(double scale) {
            if (bar.isEmpty()) {
                Source source = rough.scale() == Scale.MARKS ? Source.CORNER_MARKS : Source.PAGE_EDGES;
                return new Calibration(
                        source,
                        Math.max(format.widthMm(), format.heightMm()),
                        rough.scale() == Scale.OPPOSITE_EDGES
                                ? Math.hypot(PAPER_CUT_PERCENT, stretch.deviationPercent())
                                : PAPER_CUT_PERCENT,
                        stretch.deviationPercent(),
                        level.deviationDegrees());
            }
            double length = format.referenceBarMm();
            double deviation = Math.hypot(bar.get().deviation() * scale, BAR_DRAWN);
            return new Calibration(
                    Source.REFERENCE_BAR,
                    length,
                    100 * deviation / length,
                    stretch.deviationPercent(),
                    level.deviationDegrees());
        }

        private List<String> warnings(double scale) {
            List<String> warnings = new ArrayList<>();
            String other = rough.scale() == Scale.MARKS ? "the printed corner marks" : "the edges of the paper";
            if (bar.isEmpty()) {
                warnings.add(
                        "No reference bar was found; the millimetres were taken from %s instead.".formatted(other));
            } else if (rough.isTrueToSize() && Math.abs(scale - 1) > SCALES_DIFFER) {
                warnings.add(String.format(
                        Locale.ROOT,
                        "By %s the reference bar is %.1f mm long and not as long as asked; the millimetres were taken"
                                + " from the bar.",
                        other,
                        format.referenceBarMm() / scale));
            }
            if (isCutOff(scale)) {
                warnings.add("A part of the sheet is not in this picture; what lies there was not judged. Scan the whole"
                        + " sheet if the drawing runs on beyond it.");
            }
            return warnings;
        }

        /** Whether the picture shows clearly less than the sheet's width or height. */
        private boolean isCutOff(double scale) {
            double across = scale * (turn.isLevelAlongX() ? rough.widthMm() : rough.heightMm());
            double up = scale * (turn.isLevelAlongX() ? rough.heightMm() : rough.widthMm());
            return across < WHOLE_SHARE * format.widthMm() || up < WHOLE_SHARE * format.heightMm();
        }

        private record Sheet(PageMap toRough, double widthMm, double heightMm) {}

        /** The level page's millimetres: turned and scaled so that it holds the whole rough page. */
        private Sheet sheet(double turnDegrees, double scale) {
            Vector right = Vector.atDegrees(turnDegrees);
            Vector up = right.leftNormal();
            double left = Double.MAX_VALUE;
            double bottom = Double.MAX_VALUE;
            double most = -Double.MAX_VALUE;
            double top = -Double.MAX_VALUE;
            for (double x : new double[] {0, rough.widthMm()}) {
                for (double y : new double[] {0, rough.heightMm() * stretch.factor()}) {
                    Vector corner = new Vector(x, y);
                    left = Math.min(left, corner.dot(right));
                    most = Math.max(most, corner.dot(right));
                    bottom = Math.min(bottom, corner.dot(up));
                    top = Math.max(top, corner.dot(up));
                }
            }
            Vector origin = right.times(left).plus(up.times(bottom));
            PageMap turned = PageMap.affine(
                    right.x() / scale, up.x() / scale, origin.x(), right.y() / scale, up.y() / scale, origin.y());
            PageMap unstretched = PageMap.affine(1, 0, 0, 0, 1 / stretch.factor(), 0);
            return new Sheet(unstretched.after(turned), (most - left) * scale, (top - bottom) * scale);
        }
    }
}
