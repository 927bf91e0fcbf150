package wallplate.privacy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.springframework.stereotype.Component;
import wallplate.records.PageFacts;
import wallplate.records.ScanStore;
import wallplate.report.PagePicture;
import wallplate.sheet.InkImage;

/** Empty pages that stand where a page's picture was taken away, so that marks can still be shown where they were measured. */
@Component
public class BlankPages {

    private final ScanStore store;

    BlankPages(ScanStore store) {
        this.store = store;
    }

    /** Names in the scan store of a blank page and of its smaller picture. */
    public record Blank(String page, String screen) {}

    /** A blank page as large as another. */
    public Blank like(PageFacts page) {
        InkImage ink = new InkImage(
                page.widthPx(), page.heightPx(), page.pixelsPerMm(), new byte[page.widthPx() * page.heightPx()]);
        try {
            return new Blank(
                    store.put(new ByteArrayInputStream(PagePicture.full(ink))).name(),
                    store.put(new ByteArrayInputStream(PagePicture.forScreen(ink))).name());
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}
