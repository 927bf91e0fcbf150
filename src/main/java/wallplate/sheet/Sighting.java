package wallplate.sheet;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wallplate.geometry.Segment;
import wallplate.sheet.Sight.Bars;
import wallplate.sheet.opencv.StraightSegments;
import wallplate.sheet.page.AxisLines;
import wallplate.sheet.page.BarChoice;
import wallplate.sheet.page.BarFinder;
import wallplate.sheet.page.BarLength;
import wallplate.sheet.page.DrawingCheck;
import wallplate.sheet.page.FrameLines;
import wallplate.sheet.page.GreyPage;
import wallplate.sheet.page.LineRefit;
import wallplate.sheet.page.RoofSense;
import wallplate.sheet.page.RoughPage;
import wallplate.sheet.page.RoughPage.Scale;
import wallplate.sheet.page.SlopingLines;
import wallplate.sheet.page.Turn;
import wallplate.task.SheetFormat;

/** Understands a rough page: where its axes, frame, slopes and bar are and which way up it lies. */
final class Sighting {

    /** Lines fainter than this share of the slopes' darkness say nothing about which way up the drawing is. */
    private static final double FAINT_SHARE = 0.4;

    private final InkImage ink;
    private final SheetFormat format;
    private final RoughPage rough;
    private final LineRefit refit;
    private final FrameLines frames;

    Sighting(InkImage ink, SheetFormat format, RoughPage rough, LineRefit refit, FrameLines frames) {
        this.ink = ink;
        this.format = format;
        this.rough = rough;
        this.refit = refit;
        this.frames = frames;
    }

    Sight look() {
        List<Segment> segments =
                StraightSegments.find(new GreyPage(ink.widthPx(), ink.heightPx(), ink.pixelsPerMm(), ink.bytes()));
        return Sight.likeliest(
                AxisLines.tilts(segments).stream().map(tilt -> look(tilt, segments)).toList());
    }

    private Sight look(double tilt, List<Segment> segments) {
        AxisLines all = AxisLines.along(tilt, segments, refit);
        AxisLines drawn = frames.without(all);
        Optional<SlopingLines> slopes = SlopingLines.among(segments, tilt, refit);
        Optional<String> noDrawing = DrawingCheck.ofPage(segments, drawn, slopes);
        return noDrawing.isPresent() ? Sight.of(all, drawn, noDrawing.get()) : look(all, drawn, slopes);
    }

    private Sight look(AxisLines all, AxisLines drawn, Optional<SlopingLines> slopes) {
        BarFinder finder = barFinder(all);
        Bars bars = new Bars(finder.among(drawn.alongX()), finder.among(drawn.alongY()));
        BarChoice choice = barChoice(drawn, slopes);
        // A bar in one line with the frame or the title block is looked for where none stands alone.
        Optional<BarChoice.Choice> chosen = choice.best(bars.alongX(), bars.alongY())
                .or(() -> choice.best(finder.amongJoined(all.alongX()), finder.amongJoined(all.alongY())));
        Turn turn = chosen.map(BarChoice.Choice::turn).orElseGet(choice::withoutBar);
        return new Sight(all, drawn, bars, chosen, turn, DrawingCheck.ofSection(drawn, slopes, turn));
    }

    private BarFinder barFinder(AxisLines all) {
        return new BarFinder(ink, refit, BarLength.on(rough, format.referenceBarMm()), frames.wholeOrInPieces(all));
    }

    private BarChoice barChoice(AxisLines drawn, Optional<SlopingLines> slopes) {
        return new BarChoice(
                rough.widthMm(),
                rough.heightMm(),
                rough.isLandscape(format) == format.landscape(),
                rough.scale() == Scale.MARKS,
                turn -> shareUnder(drawn, slopes, turn));
    }

    /**
     * How much of the drawing's level and upright lines lies under its slopes, for a turn. Folds, streaks and what was
     * rubbed out are much fainter than the slopes and not asked, nor are pieces of a frame, some of which may not have been found.
     */
    private double shareUnder(AxisLines drawn, Optional<SlopingLines> slopes, Turn turn) {
        List<LineRefit.Fitted> sloping = slopes.map(SlopingLines::lines).orElse(List.of());
        double darkness = sloping.stream().mapToDouble(LineRefit.Fitted::darkness).average().orElse(0);
        List<Segment> frame = frames.wholeOrInPieces(drawn);
        List<Segment> lines = Stream.concat(drawn.alongX().stream(), drawn.alongY().stream())
                .filter(line -> line.darkness() > FAINT_SHARE * darkness)
                .map(LineRefit.Fitted::segment)
                .filter(line -> !frame.contains(line))
                .toList();
        return RoofSense.shareUnder(turn, sloping.stream().map(LineRefit.Fitted::segment).toList(), lines);
    }
}
