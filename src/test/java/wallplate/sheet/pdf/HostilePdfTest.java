package wallplate.sheet.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static wallplate.sheet.pdf.RawPdf.ascii;
import static wallplate.sheet.pdf.RawPdf.deflatedSpaces;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.sheet.ScanPage;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.ScanPage.Refused;

/**
 * PDF files that ask for memory or time without end: each is refused with a sentence, soon, and before the memory is
 * taken. What a thread allocates is counted by the JDK itself.
 */
class HostilePdfTest {

    private static final long MOST_PIXELS = 80_000_000;
    private static final Duration SOON = Duration.ofSeconds(20);
    /** Much less than any of these files asks for. */
    private static final long MODEST_BYTES = 100_000_000;

    private static final String TOO_MUCH = "more memory or time";

    @Test
    void refusesPackedObjectsThatUnpackWithoutEnd() {
        byte[] packed = deflatedSpaces(600_000_000);
        // The table says that the catalogue is the first object in the packed ones.
        RawPdf raw = RawPdf.start()
                .object(2, "<< /Type /Pages /Kids [3 0 R] /Count 1 >>")
                .object(3, "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 216 144] >>");
        int objects = raw.size();
        raw.stream(9, "/Type /ObjStm /N 1 /First 5 /Filter /FlateDecode", packed);
        int table = raw.size();
        ByteBuffer entries = ByteBuffer.allocate(10 * 7);
        entry(entries, 1, 2, 9, 0);
        entry(entries, 9, 1, objects, 0);
        raw.stream(10, "/Type /XRef /Size 10 /W [1 4 2] /Root 1 0 R", entries.array());

        assertRefused(raw.endAt(table), TOO_MUCH);
    }

    private static void entry(ByteBuffer entries, int number, int type, int first, int second) {
        entries.position(number * 7);
        entries.put((byte) type).putInt(first).putShort((short) second);
    }

    @Test
    void refusesTableOfObjectsThatUnpacksWithoutEnd() {
        RawPdf raw = RawPdf.start().onePage("").stream(4, "", ascii("n"));
        int table = raw.size();
        raw.stream(10, "/Type /XRef /Size 90000000 /W [1 4 2] /Root 1 0 R /Filter /FlateDecode", deflatedSpaces(600_000_000));

        assertRefused(raw.endAt(table), TOO_MUCH);
    }

    /** A profile is no drawing instruction and no image, and is held in memory whole. */
    @Test
    void refusesColourProfileThatUnpacksWithoutEnd() {
        byte[] pdf = RawPdf.start()
                .onePage("/ColorSpace << /C [/ICCBased 6 0 R] >>")
                .stream(4, "", ascii("/C cs 0.5 sc 0 0 100 100 re f"))
                .stream(6, "/N 1 /Filter /FlateDecode", deflatedSpaces(600_000_000))
                .end();

        assertBounded(pdf);
    }

    @Test
    void refusesFormThatUnpacksWithoutEnd() {
        byte[] pdf = RawPdf.start()
                .onePage("/XObject << /A 5 0 R >>")
                .stream(4, "", ascii("/A Do"))
                .stream(
                        5,
                        "/Type /XObject /Subtype /Form /BBox [0 0 216 144] /Filter /FlateDecode",
                        deflatedSpaces(600_000_000))
                .end();

        assertBounded(pdf);
    }

    /** Long repeats pack to a thousandth with LZW too. */
    @Test
    void refusesLzwThatUnpacksWithoutEnd() {
        byte[] packed = lzwZeros(20);
        byte[] pdf = RawPdf.withImage(
                        "/Width 300 /Height 200 /ColorSpace /DeviceGray /BitsPerComponent 8 /Filter /LZWDecode", packed)
                .end();

        assertThat(pdf.length).isLessThan(150_000);
        assertRefused(pdf, TOO_MUCH);
    }

    /**
     * Zeros as LZW packs them, after ISO 32000-1, section 7.4.4: each code stands for one zero more than the code before,
     * until the table of 4096 is full and begins anew; a round makes 7.4 million.
     */
    private static byte[] lzwZeros(int rounds) {
        BitSet bits = new BitSet();
        int end = 0;
        int width = 9;
        for (int round = 0; round < rounds; round++) {
            end = append(bits, end, 256, width);
            width = 9;
            end = append(bits, end, 0, width);
            for (int code = 258; code < 4094; code++) {
                width = code + 1 >= 2048 ? 12 : code + 1 >= 1024 ? 11 : code + 1 >= 512 ? 10 : 9;
                end = append(bits, end, code, width);
            }
        }
        end = append(bits, end, 257, width);
        byte[] bytes = new byte[(end + 7) / 8];
        for (int bit = bits.nextSetBit(0); bit >= 0; bit = bits.nextSetBit(bit + 1)) {
            bytes[bit / 8] |= (byte) (0x80 >> bit % 8);
        }
        return bytes;
    }

    private static int append(BitSet bits, int end, int code, int width) {
        for (int i = 0; i < width; i++) {
            bits.set(end + i, (code >> (width - 1 - i) & 1) == 1);
        }
        return end + width;
    }

    @Test
    void refusesRunsBehindLettersThatUnpackWithoutEnd() {
        // 129 equal bytes in two, written as hexadecimal digits.
        byte[] pdf = RawPdf.withImage(
                        "/Width 30 /Height 20 /ColorSpace /DeviceGray /BitsPerComponent 8"
                                + " /Filter [/ASCIIHexDecode /RunLengthDecode]",
                        ascii("8100".repeat(1_000_000) + ">"))
                .end();

        assertRefused(pdf, TOO_MUCH);
    }

    @ParameterizedTest
    @ValueSource(strings = {"/FlateDecode", "/LZWDecode"})
    void refusesRowsLongerThanAnyScans(String filter) {
        byte[] pdf = RawPdf.withImage(
                        "/Width 300 /Height 200 /ColorSpace /DeviceGray /BitsPerComponent 8 /Filter " + filter
                                + " /DecodeParms << /Predictor 12 /Columns 2000000000 >>",
                        deflatedSpaces(60_000))
                .end();

        assertRefused(pdf, TOO_MUCH);
    }

    @Test
    void refusesFaxThatAsksForMoreThanItsImage() {
        byte[] pdf = RawPdf.withImage(
                        "/Width 300 /Height 200 /ColorSpace /DeviceGray /BitsPerComponent 1 /Filter /CCITTFaxDecode"
                                + " /DecodeParms << /K -1 /Columns 64000 /Rows 200000 >>",
                        new byte[100])
                .end();

        assertRefused(pdf, TOO_MUCH);
    }

    /** The image's dictionary says 300 x 200; the decoder goes by the codestream's own size. */
    @Test
    void refusesJpeg2000ThatIsLargerThanItStates() {
        ByteBuffer codestream = ByteBuffer.allocate(200);
        codestream.putInt(0xff4fff51).putShort((short) 41).putShort((short) 0).putInt(60_000).putInt(60_000);
        byte[] pdf = RawPdf.withImage(
                        "/Width 300 /Height 200 /ColorSpace /DeviceGray /BitsPerComponent 8 /Filter /JPXDecode",
                        codestream.array())
                .end();

        assertRefused(pdf, TOO_MUCH);
    }

    @Test
    void refusesJbig2ThatIsLargerThanItStates() {
        byte[] pdf = RawPdf.withImage(
                        "/Width 300 /Height 200 /ColorSpace /DeviceGray /BitsPerComponent 1 /Filter /JBIG2Decode",
                        Jbig2.page(100_000, 100_000, new byte[10]))
                .end();

        assertRefused(pdf, TOO_MUCH);
    }

    @ParameterizedTest
    @ValueSource(strings = {"2 0 R", "3 0 R", "2 0 R 2 0 R 3 0 R", "3 0 R 3 0 R"})
    void survivesPagesThatAreTheirOwnAncestors(String kids) {
        byte[] pdf = RawPdf.start()
                .object(1, "<< /Type /Catalog /Pages 2 0 R >>")
                .object(2, "<< /Type /Pages /Kids [" + kids + "] /Count 1000000 /Parent 3 0 R >>")
                .object(3, "<< /Type /Pages /Kids [2 0 R 3 0 R] /Count 1000000 /Parent 2 0 R >>")
                .end();

        assertBounded(pdf);
    }

    /** Each of the levels holds the next one twice: 2 to the power of 40 pages, in a small file. */
    @Test
    void survivesPagesThatDoubleWithEveryLevel() {
        RawPdf raw = RawPdf.start().object(1, "<< /Type /Catalog /Pages 2 0 R >>");
        for (int level = 2; level < 42; level++) {
            raw.object(
                    level,
                    "<< /Type /Pages /Kids [%d 0 R %d 0 R] /Count 1000 >>".formatted(level + 1, level + 1));
        }
        raw.object(42, "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 216 144] >>");

        assertBounded(raw.end());
    }

    @Test
    void survivesTablesThatPointBackToThemselves() {
        RawPdf raw = RawPdf.start().onePage("").stream(4, "", ascii("n"));
        int table = raw.size();

        assertBounded(raw.end("/Prev " + table));
    }

    @Test
    void survivesPackedObjectsThatHoldThemselves() {
        RawPdf raw = RawPdf.start().stream(9, "/Type /ObjStm /N 1 /First 4 /Extends 9 0 R", ascii("9 0 9 0 R"));
        int table = raw.size();
        ByteBuffer entries = ByteBuffer.allocate(10 * 7);
        entry(entries, 1, 2, 9, 0);
        entry(entries, 9, 2, 9, 0);
        raw.stream(10, "/Type /XRef /Size 10 /W [1 4 2] /Root 1 0 R", entries.array());

        assertBounded(raw.endAt(table));
    }

    @Test
    void survivesReferencesThatGoInACircle() {
        byte[] pdf = RawPdf.start()
                .object(1, "<< /Type /Catalog /Pages 2 0 R >>")
                .object(2, "3 0 R")
                .object(3, "2 0 R")
                .end();

        assertBounded(pdf);
    }

    @Test
    void survivesMaskThatIsItsOwnMask() {
        byte[] pdf = RawPdf.withImage(
                        "/Width 300 /Height 200 /ColorSpace /DeviceGray /BitsPerComponent 8 /SMask 5 0 R",
                        new byte[60_000])
                .end();

        assertBounded(pdf);
    }

    /** Each group in a group is painted on a picture of its own as large as the page. */
    @Test
    void refusesGroupsInGroupsOnALargePage() {
        RawPdf raw = RawPdf.start()
                .object(1, "<< /Type /Catalog /Pages 2 0 R >>")
                .object(2, "<< /Type /Pages /Kids [3 0 R] /Count 1 >>")
                .object(3, "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 1600 1600] /Contents 4 0 R"
                        + " /Resources << /XObject << /A 10 0 R >> >> >>")
                .stream(4, "", ascii("0 0 10 10 re f /A Do"));
        for (int number = 10; number < 60; number++) {
            raw.stream(
                    number,
                    "/Type /XObject /Subtype /Form /BBox [0 0 1600 1600] /Group << /S /Transparency /CS /DeviceRGB >>"
                            + " /Resources << /XObject << /A " + (number + 1) + " 0 R >> >>",
                    ascii("0 0 10 10 re f /A Do"));
        }
        raw.stream(60, "/Type /XObject /Subtype /Form /BBox [0 0 1600 1600]", ascii("0 0 5 5 re f"));

        assertThat(onlyRefusal(raw.end())).contains(TOO_MUCH);
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "/S /JavaScript /JS (while\\(true\\){})",
        "/S /Launch /F (calculator)",
        "/S /URI /URI (file:///etc/passwd)",
        "/S /SubmitForm /F (http://example.org/)"
    })
    void carriesOutNoAction(String action) {
        byte[] pdf = RawPdf.start()
                .object(1, "<< /Type /Catalog /Pages 2 0 R /OpenAction << " + action + " >> /AA << /WC << " + action
                        + " >> >> /Names << /JavaScript << /Names [(a) << " + action + " >>] >> >> >>")
                .object(2, "<< /Type /Pages /Kids [3 0 R] /Count 1 >>")
                .object(3, "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 216 144] /AA << /O << " + action + " >> >> >>")
                .end();

        assertThat(pages(pdf)).singleElement().extracting(ScanPage::content).isInstanceOf(Picture.class);
    }

    private static void assertRefused(byte[] pdf, String sentence) {
        assertThat(bounded(pdf)).singleElement().satisfies(page -> {
            assertThat(page.content()).isInstanceOf(Refused.class);
            assertThat(((Refused) page.content()).reason()).contains(sentence);
        });
    }

    /** Whatever comes of it: soon, with little memory, and each page a picture or a sentence. */
    private static void assertBounded(byte[] pdf) {
        assertThat(bounded(pdf)).isNotEmpty().hasSizeLessThan(2100).allSatisfy(page -> {
            if (page.content() instanceof Refused refused) {
                assertThat(refused.reason()).isNotBlank();
            }
        });
    }

    private static List<ScanPage> bounded(byte[] pdf) {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        long start = System.nanoTime();
        List<ScanPage> pages = pages(pdf);
        assertThat(Duration.ofNanos(System.nanoTime() - start)).as("time").isLessThan(SOON);
        assertThat(threads.getCurrentThreadAllocatedBytes() - before).as("bytes taken").isLessThan(MODEST_BYTES);
        return pages;
    }

    private static String onlyRefusal(byte[] pdf) {
        List<ScanPage> pages = pages(pdf);
        assertThat(pages).hasSize(1);
        assertThat(pages.get(0).content()).isInstanceOf(Refused.class);
        return ((Refused) pages.get(0).content()).reason();
    }

    private static List<ScanPage> pages(byte[] pdf) {
        List<ScanPage> pages = new ArrayList<>();
        new PdfPages("scan.pdf", MOST_PIXELS).forEach(Arrays.copyOf(pdf, pdf.length), pages::add);
        return pages;
    }
}
