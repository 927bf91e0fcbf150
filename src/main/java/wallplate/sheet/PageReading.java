package wallplate.sheet;

import java.util.Optional;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.page.BarFinder.Bar;
import wallplate.sheet.page.FrameLines;
import wallplate.sheet.page.Levelling;
import wallplate.sheet.page.LineRefit;
import wallplate.sheet.page.PageMap;
import wallplate.sheet.page.RoughPage;
import wallplate.sheet.page.RoughPage.Kind;
import wallplate.sheet.page.RuledLines;
import wallplate.sheet.page.Sharpness;
import wallplate.sheet.page.Stretch;
import wallplate.task.SheetFormat;

/**
 * The reading of one page whose paper has been found in its picture: its ink is taken, its lines are understood, it is made
 * level and true to size.
 */
final class PageReading {

    /** A hundred dots to the inch: a pencil line is one or two pixels wide. */
    private static final double LEAST_PIXELS_PER_MM = 3.9;

    private final Picture picture;
    private final SheetFormat format;
    private final RoughPage rough;
    private final FrameLines frames;
    private final LineRefit refit;

    PageReading(Picture picture, SheetFormat format, RoughPage rough) {
        this.picture = picture;
        this.format = format;
        this.rough = rough;
        this.frames = new FrameLines(rough.widthMm(), rough.heightMm());
        this.refit = new LineRefit(picture, rough.map());
    }

    SheetReading read() {
        double pixelsPerMm = rough.map().pixelsPerMmAt(new Point(rough.widthMm() / 2, rough.heightMm() / 2));
        if (pixelsPerMm < LEAST_PIXELS_PER_MM) {
            return new SheetReading.Unreadable(Refusals.tooCoarse(pixelsPerMm, isPhotograph()));
        }
        PageInk ink = new PageInk(picture, format, rough);
        Sight sight = new Sighting(ink.rough(), format, rough, refit, frames).look();
        if (sight.refusal().isPresent()) {
            return new SheetReading.Unreadable(unlessBlurred(ink, sight.refusal().get()));
        }
        if (sight.bar().isPresent() || rough.isTrueToSize()) {
            return new SheetReading.Readable(level(ink, sight));
        }
        return withoutScale(ink, sight);
    }

    private boolean isPhotograph() {
        return rough.kind() == Kind.PHOTOGRAPH;
    }

    /** A blurred picture hides what else is missing. */
    private String unlessBlurred(PageInk ink, String reason) {
        return Sharpness.isBlurred(ink.rough()) ? Refusals.blurred(isPhotograph()) : reason;
    }

    /** Everything is there but millimetres: the page is kept level, so that a person can show its bar. */
    private SheetReading withoutScale(PageInk ink, Sight sight) {
        return Sharpness.isBlurred(ink.rough())
                ? new SheetReading.Unreadable(Refusals.blurred(isPhotograph()))
                : new SheetReading.Unreadable(
                        rough.isPartOf(format)
                                ? Refusals.barCutOff(format.referenceBarMm(), isPhotograph())
                                : Refusals.nothingToMeasureBy(format.referenceBarMm(), isPhotograph()),
                        Optional.empty(),
                        Optional.of(level(ink, sight)));
    }

    private LevelPage level(PageInk ink, Sight sight) {
        Stretch stretch = stretch(sight);
        Levelling levelling = Levelling.of(
                rough,
                sight.turn(),
                stretch,
                RuledLines.measured(
                        frames.ruledByTheDrawing(sight.all(), sight.turn().isLevelAlongX()), refit),
                sight.bar(),
                format.referenceBarMm());
        PageScale scale = new PageScale(
                rough, format, sight.turn(), stretch, sight.bar(), levelling.level(), levelling.scale());
        PageMap toScan = rough.map().after(levelling.toRough());
        Point middle = new Point(levelling.widthMm() / 2, levelling.heightMm() / 2);
        PlaneMap fromRough = levelling.toRough().inverse();
        return new LevelPage(
                ink.level(levelling.toRough(), levelling.widthMm(), levelling.heightMm()),
                toScan,
                toScan.pixelsPerMmAt(middle),
                rotationInPicture(toScan, middle),
                isPhotograph(),
                scale.calibration(),
                sight.bar().map(found -> rightwards(fromRough.apply(found.segment()))),
                scale.warnings(),
                ink.code(),
                scale.isCutOff());
    }

    private Stretch stretch(Sight sight) {
        Optional<Bar> bar = sight.bar();
        double scale = bar.map(found -> format.referenceBarMm() / found.segment().length())
                .orElse(1.0);
        Optional<Double> printed = frames.frame(sight.all())
                .flatMap(found -> found.stretch(sight.turn(), scale, format.widthMm(), format.heightMm()));
        return Stretch.of(rough, printed, bar.flatMap(found -> sight.bars().second(found, sight.turn())));
    }

    /** How far level lines are turned in the picture as handed in, anticlockwise, quarter turns left out. */
    private static double rotationInPicture(PageMap toScan, Point middle) {
        Vector seen = toScan.apply(middle.plus(new Vector(1, 0))).minus(toScan.apply(middle));
        // Pixels run downwards, so the angle as seen has the other sign.
        double angle = -seen.angleDegrees();
        return angle - 90 * Math.round(angle / 90);
    }

    private static Segment rightwards(Segment segment) {
        return segment.vector().x() < 0 ? segment.reversed() : segment;
    }
}
