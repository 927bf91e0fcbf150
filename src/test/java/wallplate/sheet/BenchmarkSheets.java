package wallplate.sheet;

import java.awt.image.BufferedImage;
import wallplate.sheet.ScanPage.Picture;

/** The drawn test sheets, for benchmarks outside this package. */
public final class BenchmarkSheets {

    private BenchmarkSheets() {}

    /** An A4 page with a drawing, lying a little askew. */
    public static Picture a4At300Dpi() {
        return DrawnSheet.aSheet().scannedAt(300).turned(1.2).picture();
    }

    /** The picture as the JDK's encoders take it. */
    public static BufferedImage image(Picture picture) {
        BufferedImage image =
                new BufferedImage(picture.widthPx(), picture.heightPx(), BufferedImage.TYPE_BYTE_GRAY);
        image.getRaster().setDataElements(0, 0, picture.widthPx(), picture.heightPx(), picture.grey());
        return image;
    }
}
