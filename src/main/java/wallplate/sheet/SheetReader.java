package wallplate.sheet;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
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
        Optional<RoughPage> rough = rough(picture, format);
        if (rough.isEmpty()) {
            return new SheetReading.Unreadable(
                    "The edges of the sheet cannot be seen in this photograph. Take it again with all four corners of the"
                            + " sheet in the picture, on a darker table.");
        }
        return new PageReading(picture, format, rough.get()).read();
    }

    private static PaperSides sides(Picture picture) {
        PaperRegion region = PaperRegion.in(picture);
        PaperSides sides = PaperSides.near(region.outline(0), picture);
        for (double difference : SURROUND_DIFFERENCES) {
            if (!sides.complete()) {
                PaperSides again = PaperSides.near(region.outline(difference), picture);
                sides = again.count() > sides.count() ? again : sides;
            }
        }
        return sides.complete() ? sides : whole(region, picture).orElse(sides);
    }

    /** All four edges where only a closer look finds them: beside a narrow strip of lid, or on a desk as bright as the paper. */
    private static Optional<PaperSides> whole(PaperRegion region, Picture picture) {
        return Stream.<Supplier<PaperRegion>>of(region::beyondBorder, region::byTexture)
                .map(look -> PaperSides.near(look.get().outline(0), picture))
                .filter(PaperSides::complete)
                .findFirst();
    }

    private static Optional<RoughPage> rough(Picture picture, SheetFormat format) {
        double longer = Math.max(format.widthMm(), format.heightMm());
        double shorter = Math.min(format.widthMm(), format.heightMm());
        PaperSides sides = sides(picture);
        PaperRectification paper = new PaperRectification(picture, longer, shorter);
        List<SeenMark> marks = CornerMarkFinder.find(picture);
        Optional<RoughPage> marked = marks.isEmpty()
                ? Optional.empty()
                : new MarkRectification(format, sides, paper.lens(sides)).rectify(marks);
        return marked.isPresent() ? marked : paper.rectify(sides);
    }
}
