package wallplate.drafting.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.jspecify.annotations.Nullable;
import wallplate.drafting.paper.Typeface;

/**
 * The faces embedded in one document, each loaded when it is first needed.
 *
 * <p>A learner's name may hold letters that Barlow lacks. They are set in the wider face that PDFBox carries (Liberation
 * Sans, SIL Open Font License), and a letter that neither has becomes a question mark.
 */
final class EmbeddedFaces {

    private static final String WIDER_FACE = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    private final PDDocument document;
    private final Map<Typeface, PDFont> faces = new EnumMap<>(Typeface.class);
    private @Nullable PDFont wider;

    EmbeddedFaces(PDDocument document) {
        this.document = document;
    }

    /** Letters of one face that follow each other. */
    record Run(PDFont font, String text) {}

    List<Run> runs(String text, Typeface typeface) throws IOException {
        List<Run> runs = new ArrayList<>();
        PDFont face = face(typeface);
        StringBuilder letters = new StringBuilder();
        PDFont current = face;
        for (int point : text.codePoints().toArray()) {
            String letter = Character.toString(point);
            PDFont font = has(face, letter) ? face : widerFace();
            if (font != current && !letters.isEmpty()) {
                runs.add(new Run(current, letters.toString()));
                letters.setLength(0);
            }
            current = font;
            letters.append(has(font, letter) ? letter : "?");
        }
        if (!letters.isEmpty()) {
            runs.add(new Run(current, letters.toString()));
        }
        return runs;
    }

    private static boolean has(PDFont font, String letter) throws IOException {
        try {
            font.encode(letter);
            return true;
        } catch (IllegalArgumentException missing) {
            return false;
        }
    }

    private PDFont face(Typeface typeface) throws IOException {
        PDFont face = faces.get(typeface);
        if (face == null) {
            try (InputStream stream = FaceWidths.open(typeface)) {
                face = PDType0Font.load(document, stream, true);
            }
            faces.put(typeface, face);
        }
        return face;
    }

    private PDFont widerFace() throws IOException {
        if (wider == null) {
            try (InputStream stream = PDFont.class.getResourceAsStream(WIDER_FACE)) {
                if (stream == null) {
                    throw new IOException("PDFBox no longer carries " + WIDER_FACE);
                }
                wider = PDType0Font.load(document, stream, true);
            }
        }
        return wider;
    }
}
