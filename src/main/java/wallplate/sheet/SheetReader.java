package wallplate.sheet;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.ScanPage.Refused;
import wallplate.sheet.codes.CodeReader;
import wallplate.sheet.opencv.CornerMarkFinder;
import wallplate.sheet.opencv.PaperRegion;
import wallplate.sheet.page.MarkRectification;
import wallplate.sheet.page.PaperRectification;
import wallplate.sheet.page.PaperSides;
import wallplate.sheet.page.RoughPage;
import wallplate.sheet.page.SeenMark;
import wallplate.task.SheetFormat;

/**
 * Makes a level page in true millimetres of a page as it was handed in, or refuses it with a reason.
 *
 * <p>It keeps nothing between pages and may be used by several threads at once.
 */
public final class SheetReader {

    /**
     * A place on the picture's border that differs by this share from the paper's grey is not paper: tried one after
     * another where paper touches the border, in scans of even light and in photographs of uneven light.
     */
    private static final double[] SURROUND_DIFFERENCES = {0.1, 0.25};

    /**
     * Twenty-five dots to the inch where the picture shows the whole sheet: a part of a sheet at a resolution that can be
     * read would have to be smaller than a hand.
     */
    private static final double FEWEST_PIXELS_PER_MM = 1;

    /** Reads one page that is expected to be a sheet of the given format. */
    public SheetReading read(ScanPage page, SheetFormat format) {
        if (page.content() instanceof Refused refused) {
            return new SheetReading.Unreadable(refused.reason());
        }
        Picture picture = (Picture) page.content();
        SheetReading reading = read(picture, format);
        // The code's usual place cannot be told on a page that is not understood: it is looked for everywhere.
        return reading instanceof SheetReading.Unreadable unreadable
                ? unreadable.withCode(CodeReader.read(picture))
                : reading;
    }

    private static SheetReading read(Picture picture, SheetFormat format) {
        double longer = Math.max(format.widthMm(), format.heightMm());
        if (Math.max(picture.widthPx(), picture.heightPx()) < FEWEST_PIXELS_PER_MM * longer) {
            return new SheetReading.Unreadable(Refusals.tooSmall(picture.widthPx(), picture.heightPx()));
        }
        double shorter = Math.min(format.widthMm(), format.heightMm());
        PaperRectification paper = new PaperRectification(picture, longer, shorter);
        PaperSides sides = sides(picture, paper);
        Optional<RoughPage> rough = rough(picture, format, paper, sides);
        if (rough.isEmpty()) {
            return new SheetReading.Unreadable(
                    "The edges of the sheet cannot be seen in this photograph. Take it again with all four corners of the"
                            + " sheet in the picture, on a darker table.");
        }
        SheetReading reading = new PageReading(picture, format, rough.get()).read();
        return hasBar(reading)
                ? reading
                : paper.insteadOf(rough.get(), sides)
                        .map(other -> new PageReading(picture, format, other).read())
                        .filter(SheetReader::hasBar)
                        .orElse(reading);
    }

    private static boolean hasBar(SheetReading reading) {
        return reading instanceof SheetReading.Readable readable && readable.page().bar().isPresent();
    }

    private static PaperSides sides(Picture picture, PaperRectification paper) {
        PaperRegion region = PaperRegion.in(picture);
        PaperSides sides = PaperSides.near(region.outline(0), picture);
        for (double difference : SURROUND_DIFFERENCES) {
            if (!paper.mayBeSheet(sides)) {
                PaperSides again = PaperSides.near(region.outline(difference), picture);
                sides = paper.mayBeSheet(again) || again.count() > sides.count() ? again : sides;
            }
        }
        return paper.mayBeSheet(sides) && !paper.mayBeShadow(sides) ? sides : closer(sides, region, picture, paper);
    }

    /**
     * All four edges where only a closer look finds them: beside a narrow strip of lid, on a desk as bright as the paper, or
     * within the shadow that the paper throws on a lid.
     */
    private static PaperSides closer(PaperSides sides, PaperRegion region, Picture picture, PaperRectification paper) {
        PaperSides best = sides;
        for (Supplier<PaperRegion> look : List.<Supplier<PaperRegion>>of(region::beyondBorder, region::byTexture)) {
            PaperSides again = PaperSides.near(look.get().outline(0), picture);
            if (paper.mayBeSheet(again) && !paper.mayBeShadow(again)) {
                return again;
            }
            best = paper.mayBeSheet(best) || !paper.mayBeSheet(again) ? best : again;
        }
        return best;
    }

    private static Optional<RoughPage> rough(
            Picture picture, SheetFormat format, PaperRectification paper, PaperSides sides) {
        List<SeenMark> marks = CornerMarkFinder.find(picture);
        Optional<RoughPage> marked = marks.isEmpty()
                ? Optional.empty()
                : new MarkRectification(format, sides, paper.lens(sides)).rectify(marks);
        return marked.isPresent() ? marked : paper.rectify(sides);
    }
}
