package wallplate.report.pdf;

import java.io.IOException;
import java.io.InputStream;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** DejaVu Sans Condensed, regular and bold, embedded in a document as far as it is used. */
final class ReportFonts {

    private static final String FOLDER = "/fonts/";
    private static final byte[] REGULAR = read("DejaVuSansCondensed.ttf");
    private static final byte[] BOLD = read("DejaVuSansCondensed-Bold.ttf");

    private final PDFont regular;
    private final PDFont bold;
    private final CmapLookup glyphs;

    ReportFonts(PDDocument document) throws IOException {
        TrueTypeFont regularType = new TTFParser().parse(new RandomAccessReadBuffer(REGULAR));
        TrueTypeFont boldType = new TTFParser().parse(new RandomAccessReadBuffer(BOLD));
        this.glyphs = regularType.getUnicodeCmapLookup();
        this.regular = PDType0Font.load(document, regularType, true);
        this.bold = PDType0Font.load(document, boldType, true);
    }

    private static byte[] read(String file) {
        try (InputStream stream = ReportFonts.class.getResourceAsStream(FOLDER + file)) {
            if (stream == null) {
                throw new IllegalStateException("the font " + file + " is not on the class path");
            }
            return stream.readAllBytes();
        } catch (IOException broken) {
            throw new IllegalStateException("the font " + file + " cannot be read", broken);
        }
    }

    PDFont of(Type type) {
        return type.bold() ? bold : regular;
    }

    /** The text with a question mark for each character that the font cannot show. */
    String showable(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints().forEach(point -> {
            if (Character.isISOControl(point)) {
                shown.append(' ');
            } else {
                shown.appendCodePoint(glyphs.getGlyphId(point) == 0 ? '?' : point);
            }
        });
        return shown.toString();
    }

    double width(String showable, Type type) throws IOException {
        return of(type).getStringWidth(showable) / 1000 * type.sizeMm();
    }
}
