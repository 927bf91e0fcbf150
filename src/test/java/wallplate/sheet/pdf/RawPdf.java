package wallplate.sheet.pdf;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/** A PDF file written object by object, so that it can hold what no library would write; after ISO 32000-1, section 7.5. */
final class RawPdf {

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final Map<Integer, Integer> offsets = new TreeMap<>();

    private RawPdf() {
        write("%PDF-1.7\n");
    }

    static RawPdf start() {
        return new RawPdf();
    }

    RawPdf object(int number, String content) {
        offsets.put(number, out.size());
        write(number + " 0 obj\n" + content + "\nendobj\n");
        return this;
    }

    RawPdf stream(int number, String entries, byte[] content) {
        offsets.put(number, out.size());
        write(number + " 0 obj\n<< " + entries + " /Length " + content.length + " >>\nstream\n");
        out.writeBytes(content);
        write("\nendstream\nendobj\n");
        return this;
    }

    /** Catalogue 1 and page tree 2 with one page 3 of 300 x 200 pixels at 100 dpi, whose contents are 4. */
    RawPdf onePage(String resources) {
        return object(1, "<< /Type /Catalog /Pages 2 0 R >>")
                .object(2, "<< /Type /Pages /Kids [3 0 R] /Count 1 >>")
                .object(3, "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 216 144] /Contents 4 0 R /Resources << "
                        + resources + " >> >>");
    }

    /** The page of {@link #onePage} showing image 5 and nothing else. */
    static RawPdf withImage(String entries, byte[] content) {
        return start().onePage("/XObject << /A 5 0 R >>")
                .stream(4, "", ascii("216 0 0 144 0 0 cm /A Do"))
                .stream(5, "/Type /XObject /Subtype /Image " + entries, content);
    }

    int size() {
        return out.size();
    }

    /** The file with its table of objects; root is object 1. */
    byte[] end() {
        return end("");
    }

    byte[] end(String trailer) {
        int table = out.size();
        write("xref\n0 1\n0000000000 65535 f \n");
        offsets.forEach((number, offset) -> write(number + " 1\n" + String.format("%010d 00000 n \n", offset)));
        write("trailer\n<< /Size 100 /Root 1 0 R " + trailer + " >>\nstartxref\n" + table + "\n%%EOF\n");
        return out.toByteArray();
    }

    /** The file as it stands with the stream of references at this place as its table. */
    byte[] endAt(int table) {
        write("startxref\n" + table + "\n%%EOF\n");
        return out.toByteArray();
    }

    static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    /** Spaces, deflated to about a thousandth. */
    static byte[] deflatedSpaces(int count) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflater = new DeflaterOutputStream(bytes, new Deflater(Deflater.BEST_SPEED))) {
            byte[] block = " ".repeat(1_000_000).getBytes(StandardCharsets.US_ASCII);
            for (int left = count; left > 0; left -= block.length) {
                deflater.write(block, 0, Math.min(left, block.length));
            }
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private void write(String text) {
        out.writeBytes(ascii(text));
    }
}
