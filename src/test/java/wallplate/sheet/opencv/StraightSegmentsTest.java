package wallplate.sheet.opencv;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wallplate.sheet.page.GreyPage;

/** Pages so narrow, as a damaged file makes them, that the detector itself would fail. */
class StraightSegmentsTest {

    @ParameterizedTest
    @CsvSource({"1, 400", "5, 400", "400, 5", "400, 1", "2, 2"})
    void findsNothingOnAPageNarrowerThanTheDetectorAllows(int widthPx, int heightPx) {
        assertThat(StraightSegments.find(new GreyPage(widthPx, heightPx, 4, new byte[widthPx * heightPx]))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"6, 400", "400, 6"})
    void looksAtTheNarrowestThatItAllows(int widthPx, int heightPx) {
        assertThat(StraightSegments.find(new GreyPage(widthPx, heightPx, 4, new byte[widthPx * heightPx]))).isEmpty();
    }
}
