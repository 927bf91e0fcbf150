package wallplate.drafting.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.Map;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import wallplate.drafting.paper.TextMeasure;
import wallplate.drafting.paper.Typeface;

/**
 * The advance widths of the embedded faces, read once.
 *
 * <p>Kerning is left out, as the PDF writer leaves it out. A letter that the face lacks is taken as wide as a capital M.
 */
public final class FaceWidths implements TextMeasure {

    private static final int LETTERS = 0x3000;

    private static final FaceWidths SHARED = new FaceWidths();

    private final Map<Typeface, float[]> widths = new EnumMap<>(Typeface.class);

    private FaceWidths() {
        for (Typeface typeface : Typeface.values()) {
            widths.put(typeface, read(typeface));
        }
    }

    public static FaceWidths shared() {
        return SHARED;
    }

    @Override
    public double widthMm(String text, Typeface typeface, double heightMm) {
        float[] face = widths.get(typeface);
        double em = 0;
        for (int index = 0; index < text.length(); index++) {
            char letter = text.charAt(index);
            em += letter < LETTERS ? face[letter] : face['M'];
        }
        return em * Typeface.sizeForCapitals(heightMm);
    }

    /** Widths in ems by character, none of them missing. */
    private static float[] read(Typeface typeface) {
        try (InputStream stream = open(typeface);
                TrueTypeFont font = new TTFParser(true).parse(new RandomAccessReadBuffer(stream))) {
            CmapLookup glyphs = font.getUnicodeCmapLookup();
            float unitsPerEm = font.getUnitsPerEm();
            float capital = font.getAdvanceWidth(glyphs.getGlyphId('M')) / unitsPerEm;
            float[] face = new float[LETTERS];
            for (char letter = 0; letter < LETTERS; letter++) {
                int glyph = glyphs.getGlyphId(letter);
                face[letter] = glyph == 0 ? capital : font.getAdvanceWidth(glyph) / unitsPerEm;
            }
            return face;
        } catch (IOException broken) {
            throw new UncheckedIOException("the face " + typeface.resource() + " cannot be read", broken);
        }
    }

    static InputStream open(Typeface typeface) {
        InputStream stream = FaceWidths.class.getResourceAsStream(typeface.resource());
        if (stream == null) {
            throw new IllegalStateException("the face " + typeface.resource() + " is missing from the program");
        }
        return stream;
    }
}
