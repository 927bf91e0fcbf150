package wallplate.sheet;

import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.ScanPage.Refused;
import wallplate.task.SheetFormat;

/**
 * Makes a level page in true millimetres of a page as it was handed in, or refuses it with a reason.
 *
 * <p>It keeps nothing between pages and may be used by several threads at once.
 */
public final class SheetReader {

    /** Reads one page that is expected to be a sheet of the given format. */
    public SheetReading read(ScanPage page, SheetFormat format) {
        if (page.content() instanceof Refused refused) {
            return new SheetReading.Unreadable(refused.reason());
        }
        Picture picture = (Picture) page.content();
        return new SheetReading.Unreadable(
                "Pictures of %d x %d pixels are not read yet.".formatted(picture.widthPx(), picture.heightPx()));
    }
}
