package wallplate.sheet.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.mockito.Mockito.mock;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.function.IntFunction;
import javax.imageio.stream.MemoryCacheImageInputStream;
import org.apache.pdfbox.jbig2.Bitmap;
import org.apache.pdfbox.jbig2.SegmentHeader;
import org.apache.pdfbox.jbig2.io.SubInputStream;
import org.apache.pdfbox.jbig2.segments.SymbolDictionary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.test.util.ReflectionTestUtils;

/** Sizes of symbols against those that the library's own decoder finds. */
class Jbig2SymbolsTest {

    private static final int[][] USUAL_ADAPTIVE = {{3, -1}, {-3, -1}, {2, -2}, {-2, -2}};

    /**
     * The first symbol dictionaries of the standard's example, ITU-T T.88, annex H: a letter by Huffman's tables, two letters
     * by arithmetic coding. The bytes are from memory; the library decodes a p of 5 x 8 pixels, and a c and an a of 6 x 6.
     */
    @ParameterizedTest
    @CsvSource({
        "00010000000100000001E9CBF40026AF04BFF0782FE00040, 1, 40",
        "080002FF00000002000000024FE78C200E1DC7CF0111C4B26FFFAC, 2, 72"
    })
    void findsTheSizesOfTheStandardsExample(String hex, int symbols, long pixels) throws Exception {
        byte[] segment = HexFormat.of().parseHex(hex);

        assertThat(Jbig2Symbols.pixels(segment)).isEqualTo(pixels);
        assertThat(pixelsByTheLibrary(segment, symbols)).hasValue(pixels);
    }

    /** Random bytes are a valid arithmetic code, and of tables one now and then: what they say, both must read alike. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4})
    void findsTheSizesThatTheLibraryFinds(int kind) throws Exception {
        IntFunction<byte[]> random = kind == 4 ? Jbig2SymbolsTest::byTables : seed -> arithmetic(seed, kind);
        int compared = 0;
        for (int seed = 0; seed < 250; seed++) {
            byte[] segment = random.apply(seed);
            Optional<Long> pixels = pixelsIfAllowed(segment);
            if (pixels.isEmpty()) {
                continue;
            }
            Optional<Long> wanted = pixelsByTheLibrary(segment, segment[numbersAt(kind) + 7]);
            if (wanted.isPresent()) {
                assertThat(pixels).as("seed %d", seed).isEqualTo(wanted);
                compared++;
            }
        }
        assertThat(compared).isGreaterThan(20);
    }

    /** Sizes by tables B.4 and B.2: five or six ones, and what is beyond 76 and 75 in 32 bits. */
    @ParameterizedTest
    @ValueSource(ints = {100_000, 15_000, 2_000_000_000})
    void refusesSymbolsThatAreTooLarge(int side) {
        String bits = "11111" + binary(side) + "111110" + binary(side) + "0".repeat(64);
        ByteBuffer segment = ByteBuffer.allocate(10 + bits.length() / 8);
        segment.putShort((short) 1).putInt(1).putInt(1);
        for (int i = 0; i + 8 <= bits.length(); i += 8) {
            segment.put((byte) Integer.parseInt(bits.substring(i, i + 8), 2));
        }

        assertThatThrownBy(() -> Jbig2Symbols.pixels(segment.array())).isInstanceOf(PageLimits.Exceeded.class);
    }

    /** Made out of others; contexts from another dictionary; tables of the file's own for heights and for the pixels' length. */
    @ParameterizedTest
    @ValueSource(ints = {0x2, 0x100, 0x1 | 3 << 2, 0x1 | 0x40})
    void refusesWhatItDoesNotFollow(int flags) {
        byte[] segment = ByteBuffer.allocate(60).putShort((short) flags).array();

        assertThatThrownBy(() -> Jbig2Symbols.pixels(segment)).isInstanceOf(PageLimits.Exceeded.class);
    }

    @Test
    void endsWhereTheDataEnds() throws IOException {
        assertThat(Jbig2Symbols.pixels(new byte[] {0})).isZero();
        assertThat(Jbig2Symbols.pixels(new byte[] {8, 0, 2})).isZero();
    }

    private static int numbersAt(int kind) {
        return kind == 4 ? 2 : kind == 0 ? 10 : 4;
    }

    private static byte[] arithmetic(int seed, int template) {
        Random random = new Random(seed);
        ByteBuffer out = ByteBuffer.allocate(700).putShort((short) (template << 10));
        for (int i = 0; i < (template == 0 ? 4 : 1); i++) {
            int[] usual = template > 1 ? new int[] {2, -1} : USUAL_ADAPTIVE[i];
            int[] place = random.nextBoolean() ? usual : new int[] {random.nextInt(20) - 10, -1 - random.nextInt(5)};
            out.put((byte) place[0]).put((byte) place[1]);
        }
        return withRandom(out, random);
    }

    private static byte[] byTables(int seed) {
        Random random = new Random(seed);
        return withRandom(ByteBuffer.allocate(700).putShort((short) (1 | random.nextInt(2) << 2 | random.nextInt(2) << 4)), random);
    }

    private static byte[] withRandom(ByteBuffer out, Random random) {
        int count = 1 + random.nextInt(3);
        byte[] coded = new byte[out.putInt(count).putInt(count).remaining()];
        random.nextBytes(coded);
        return out.put(coded).array();
    }

    private static Optional<Long> pixelsIfAllowed(byte[] segment) throws IOException {
        try {
            return Optional.of(Jbig2Symbols.pixels(segment));
        } catch (PageLimits.Exceeded e) {
            return Optional.empty();
        }
    }

    /** The pixels of all new symbols; empty where the library does not get so far. */
    private static Optional<Long> pixelsByTheLibrary(byte[] segment, int count) throws Exception {
        SymbolDictionary dictionary = new SymbolDictionary();
        dictionary.init(
                mock(SegmentHeader.class),
                new SubInputStream(
                        new MemoryCacheImageInputStream(new ByteArrayInputStream(segment)), 0, segment.length));
        try {
            dictionary.getDictionary();
        } catch (IOException | RuntimeException e) {
            // Which symbols are handed on comes last and is random, too.
        }
        Bitmap[] symbols = (Bitmap[]) ReflectionTestUtils.getField(dictionary, "newSymbols");
        if (symbols == null || symbols.length != count || Arrays.stream(symbols).anyMatch(Objects::isNull)) {
            return Optional.empty();
        }
        return Optional.of(Arrays.stream(symbols)
                .mapToLong(symbol -> (long) symbol.getWidth() * symbol.getHeight())
                .sum());
    }

    private static String binary(int number) {
        return "%32s".formatted(Integer.toBinaryString(number)).replace(' ', '0');
    }
}
