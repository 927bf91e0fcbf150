package wallplate.sheet.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static wallplate.sheet.pdf.RawPdf.ascii;
import static wallplate.sheet.pdf.RawPdf.deflatedSpaces;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.io.ByteArrayOutputStream;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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
        assertRefused(jpeg2000(codestream(60_000, 60_000, 60_000, 60_000, 1, 64, 15)), TOO_MUCH);
    }

    /** A decoder keeps an object for each tile, precinct and code block, however few samples there are. */
    @Test
    void refusesJpeg2000InPiecesOfAFewSamples() {
        assertRefused(jpeg2000(codestream(8000, 8000, 2, 2, 1, 64, 15)), TOO_MUCH);
        assertRefused(jpeg2000(codestream(8000, 8000, 8000, 8000, 1, 4, 15)), TOO_MUCH);
        assertRefused(jpeg2000(codestream(8000, 8000, 8000, 8000, 1, 64, 0)), TOO_MUCH);
        assertRefused(jpeg2000(codestream(300, 200, 300, 200, 16_384, 64, 15)), TOO_MUCH);
    }

    /** A small size stands in a box that decoders pass over, the true one in the codestream's box. */
    @Test
    void refusesJpeg2000WhoseSizeHidesBehindAnother() {
        byte[] small = codestream(300, 200, 300, 200, 1, 64, 15);
        byte[] large = codestream(60_000, 60_000, 60_000, 60_000, 1, 64, 15);
        ByteBuffer file = ByteBuffer.allocate(12 + 8 + small.length + 8 + large.length);
        file.putInt(12).putInt(0x6a502020).putInt(0x0d0a870a);
        file.putInt(8 + small.length).put(RawPdf.ascii("uuid")).put(small);
        file.putInt(0).put(RawPdf.ascii("jp2c")).put(large);

        assertRefused(jpeg2000(file.array()), TOO_MUCH);
    }

    private static byte[] jpeg2000(byte[] content) {
        return RawPdf.withImage(
                        "/Width 300 /Height 200 /ColorSpace /DeviceGray /BitsPerComponent 8 /Filter /JPXDecode", content)
                .end();
    }

    /** The main header of a codestream, after ISO/IEC 15444-1, annexes A.5.1 and A.6.1, and the start of a tile. */
    private static byte[] codestream(
            int width, int height, int tileWidth, int tileHeight, int components, int block, int precinctExponent) {
        ByteBuffer out = ByteBuffer.allocate(100 + 3 * components);
        out.putInt(0xff4fff51).putShort((short) (38 + 3 * components)).putShort((short) 0);
        out.putInt(width).putInt(height).putInt(0).putInt(0).putInt(tileWidth).putInt(tileHeight).putInt(0).putInt(0);
        out.putShort((short) components);
        for (int i = 0; i < components; i++) {
            out.put((byte) 7).put((byte) 1).put((byte) 1);
        }
        byte exponent = (byte) (Integer.numberOfTrailingZeros(block) - 2);
        byte precinct = (byte) (precinctExponent << 4 | precinctExponent);
        out.putShort((short) 0xff52).putShort((short) 13).put((byte) 1).put((byte) 0).putShort((short) 1).put((byte) 0);
        out.put((byte) 0).put(exponent).put(exponent).put((byte) 0).put((byte) 1).put(precinct);
        out.putShort((short) 0xff90);
        return out.array();
    }

    @Test
    void refusesJbig2ThatIsLargerThanItStates() {
        byte[] pdf = RawPdf.withImage(
                        "/Width 300 /Height 200 /ColorSpace /DeviceGray /BitsPerComponent 1 /Filter /JBIG2Decode",
                        Jbig2.page(100_000, 100_000, new byte[10]))
                .end();

        assertRefused(pdf, TOO_MUCH);
    }

    /** Types and places of the numbers after ITU-T T.88, sections 7.3 and 7.4. */
    @ParameterizedTest
    @CsvSource({
        "0, 10, 2000000000", // symbols that are handed on
        "0, 14, 2000000000", // new symbols
        "6, 19, 2000000000", // places of symbols in a text region
        "16, 3, 2000000000", // patterns
        "22, 18, 400000000", // columns of a halftone's grid
        "50, 0, 2000000000" // the last row of a stripe
    })
    void refusesJbig2OfWhichOneSegmentAsksForTooMuch(int type, int at, int number) {
        byte[] data = new byte[60];
        ByteBuffer.wrap(data).putInt(at, number);
        data[1] |= type == 16 ? 40 : 0;
        data[2] |= type == 16 ? 40 : 0;
        data[25] |= type == 22 ? 1 : 0;
        ByteArrayOutputStream segments = new ByteArrayOutputStream();
        segments.writeBytes(Jbig2.page(300, 200, new byte[10]));
        Jbig2.segment(segments, 2, type, data);

        assertRefused(jbig2(segments.toByteArray()).end(), TOO_MUCH);
    }

    @Test
    void refusesJbig2WhoseRegionHidesBehindASegmentThatRefersToMany() {
        ByteArrayOutputStream segments = new ByteArrayOutputStream();
        segments.writeBytes(Jbig2.page(300, 200, new byte[10]));
        // Nine references of a byte each, in the long form of section 7.2.4, and a text region without data.
        ByteBuffer many = ByteBuffer.allocate(5 + 4 + 2 + 9 + 1 + 4);
        many.putInt(2).put((byte) 6).putInt(7 << 29 | 9).put(new byte[2 + 9 + 1]).putInt(0);
        segments.writeBytes(many.array());
        ByteBuffer region = ByteBuffer.allocate(40).putInt(100_000).putInt(100_000);
        Jbig2.segment(segments, 3, 38, region.array());

        assertRefused(jbig2(segments.toByteArray()).end(), TOO_MUCH);
    }

    @Test
    void refusesJbig2WhoseSharedSegmentsAskForTooMuch() {
        ByteArrayOutputStream shared = new ByteArrayOutputStream();
        Jbig2.segment(shared, 0, 0, ByteBuffer.allocate(60).putInt(14, 2_000_000_000).array());
        byte[] pdf = RawPdf.withImage(
                        "/Width 300 /Height 200 /ColorSpace /DeviceGray /BitsPerComponent 1 /Filter /JBIG2Decode"
                                + " /DecodeParms << /JBIG2Globals 6 0 R >>",
                        Jbig2.page(300, 200, new byte[10]))
                .stream(6, "", shared.toByteArray())
                .end();

        assertRefused(pdf, TOO_MUCH);
    }

    /** A dictionary by Huffman's tables whose one symbol is 100,076 pixels high (table B.4: 11111 and 32 bits). */
    @Test
    void refusesJbig2WithOneSymbolWithoutEnd() {
        byte[] data = new byte[60];
        ByteBuffer.wrap(data).putShort(0, (short) 1).putInt(2, 1).putInt(6, 1).putLong(10, 0b11111L << 59 | 100_000L << 27);
        ByteArrayOutputStream segments = new ByteArrayOutputStream();
        segments.writeBytes(Jbig2.page(300, 200, new byte[10]));
        Jbig2.segment(segments, 2, 0, data);

        assertRefused(jbig2(segments.toByteArray()).end(), TOO_MUCH);
    }

    /** Each place of a symbol may make a letter of any size out of it (SBREFINE). */
    @Test
    void refusesJbig2WhoseTextRefinesSymbols() {
        byte[] data = new byte[60];
        data[18] = 2;
        ByteArrayOutputStream segments = new ByteArrayOutputStream();
        segments.writeBytes(Jbig2.page(300, 200, new byte[10]));
        Jbig2.segment(segments, 2, 6, data);

        assertRefused(jbig2(segments.toByteArray()).end(), TOO_MUCH);
    }

    private static RawPdf jbig2(byte[] segments) {
        return RawPdf.withImage(
                "/Width 300 /Height 200 /ColorSpace /DeviceGray /BitsPerComponent 1 /Filter /JBIG2Decode", segments);
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
