package wallplate.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static wallplate.sheet.DrawnSheet.aSheet;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.Calibration.Source;
import wallplate.sheet.ScanPage.Picture;
import wallplate.task.SheetFormat;

/** Sheets with exactly known lines, scanned in every way, must come out level and true. */
class SheetReaderTest {

    private static final double LEVEL_DEGREES = 0.02;
    private static final double LENGTH_SHARE = 0.0008;

    @ParameterizedTest
    @ValueSource(doubles = {0, 1.7, -2.9, 90, 88.4, 180, 181.2, 270, 272.5})
    void putsSheetUprightAndLevelHoweverItWasLaid(double turn) {
        DrawnSheet sheet = aSheet().scannedAt(200).turned(turn);

        assertLevelAndTrue(sheet, read(sheet));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.7, 91.7, 181.7})
    void saysHowFarTheDrawingWasTurnedInThePicture(double turn) {
        LevelPage page = read(aSheet().scannedAt(200).turned(turn).surroundedBy(12, 30));

        assertThat(page.rotationDegrees()).isCloseTo(-1.7, within(LEVEL_DEGREES));
    }

    @Test
    void followsTheDrawingsOwnLevelNotThePapers() {
        DrawnSheet sheet = aSheet().scannedAt(200).turned(-0.8).drawnTilted(0.55);

        assertLevelAndTrue(sheet, read(sheet));
    }

    @ParameterizedTest
    @ValueSource(doubles = {150, 300, 400})
    void readsEveryUsualResolution(double dpi) {
        DrawnSheet sheet = aSheet().scannedAt(dpi).turned(1.1);

        LevelPage page = read(sheet);

        assertLevelAndTrue(sheet, page);
        assertThat(page.scanPixelsPerMm()).isCloseTo(dpi / 25.4, within(0.01 * dpi / 25.4));
    }

    @Test
    void takesMillimetresFromTheBarWhereTheFileStatesNoResolution() {
        DrawnSheet sheet = aSheet().scannedAt(200).withoutResolution().turned(0.4);

        LevelPage page = read(sheet);

        assertLevelAndTrue(sheet, page);
        assertThat(page.calibration().source()).isEqualTo(Source.REFERENCE_BAR);
    }

    @ParameterizedTest
    @ValueSource(doubles = {50, 80, 120, 150, 200})
    void readsBarsOfOtherStatedLengths(double length) {
        DrawnSheet sheet = aSheet().on(new SheetFormat("A4", 297, 210, length)).scannedAt(200);

        LevelPage page = read(sheet);

        assertLevelAndTrue(sheet, page);
        assertThat(page.calibration().lengthMm()).isEqualTo(length);
    }

    @Test
    void findsBarInOneLineWithTheTitleBlock() {
        DrawnSheet sheet = aSheet().scannedAt(200).turned(0.6).with(
                Segment.between(134, 25, 287, 25), Segment.between(134, 5, 134, 25), Segment.between(134, 15, 287, 15));

        assertReadFromBar(sheet);
    }

    @ParameterizedTest
    @ValueSource(doubles = {129.1, 130.9})
    void findsBarWhoseTickStandsBesideTheTitleBlocksEdge(double edge) {
        DrawnSheet sheet = aSheet().scannedAt(200).with(
                Segment.between(edge, 23.3, 287, 23.3), Segment.between(edge, 5, edge, 23.3));

        assertReadFromBar(sheet);
    }

    /** The block's side stands so near the bar's tick that hardly any paper is seen between. */
    @ParameterizedTest
    @ValueSource(doubles = {130.8, 130.9, 131, 131.1})
    void findsBarWhoseTickTouchesTheTitleBlocksSide(double edge) {
        DrawnSheet sheet = aSheet().scannedAt(200).with(
                Segment.between(edge, 19, edge, 31),
                Segment.between(edge, 31, 287, 31),
                Segment.between(edge, 19, 287, 19),
                Segment.between(edge, 27, 287, 27));

        assertReadFromBar(sheet);
    }

    /** The bar's own tick lies in the block's side; a letter's stem stands behind it, in line with the bar. */
    @Test
    void findsBarThatEndsAtTheTitleBlocksSide() {
        DrawnSheet sheet = aSheet().scannedAt(200).turned(0.5).with(
                Segment.between(130, 5, 130, 38),
                Segment.between(130, 38, 287, 38),
                Segment.between(130, 5, 287, 5),
                Segment.between(133.5, 23, 133.5, 28));

        assertReadFromBar(sheet);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.7, 2.5, 5})
    void readsBarWithTicksOnOneSideOnly(double height) {
        assertReadFromBar(aSheet().scannedAt(300).turned(0.4).withTicks(0, height));
        assertReadFromBar(aSheet().scannedAt(200).turned(180.4).withTicks(height, 0));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 90, 180})
    void aFoldOverTheRoofTurnsNoSheetUpsideDown(double turn) {
        DrawnSheet sheet = aSheet().scannedAt(200)
                .turned(turn)
                .foldedAlong(Segment.between(150, 140, 150, 208), Segment.between(120, 175, 210, 175));

        assertLevelAndTrue(sheet, read(sheet));
    }

    /** The roof's long lines have the direction of a sheet that lies askew; bar and walls say that it lies otherwise. */
    @ParameterizedTest
    @ValueSource(doubles = {-3, 1, 3})
    void doesNotTakeAShallowRoofForTheLevel(double turn) {
        DrawnSheet sheet = aSheet().leanTo(7).scannedAt(200).turned(turn);

        assertLevelAndTrue(sheet, read(sheet));
    }

    @Test
    void findsBarCloseUnderALedgeOfTheDrawing() {
        DrawnSheet sheet = aSheet().scannedAt(200).with(
                Segment.between(60, 30, 190, 30), Segment.between(60, 30, 60, 45), Segment.between(190, 30, 190, 45));

        assertReadFromBar(sheet);
    }

    @Test
    void findsBarCloseToTheFrame() {
        DrawnSheet sheet = aSheet().scannedAt(200).turned(0.6).with(
                Segment.between(10, 20, 287, 20),
                Segment.between(287, 20, 287, 200),
                Segment.between(287, 200, 10, 200),
                Segment.between(10, 200, 10, 20));

        assertReadFromBar(sheet);
    }

    /** Of a faint frame the upper side was found in two pieces; more of it lies over the slope than of the walls under it. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 180})
    void piecesOfAFrameTurnNoSheetUpsideDown(double turn) {
        DrawnSheet sheet = aSheet().leanTo(12)
                .withoutBar()
                .scannedAt(200)
                .turned(turn)
                .surroundedBy(10, 30)
                .with(Segment.between(40, 200, 210, 200), Segment.between(212, 200, 237, 200));

        assertThat(level(sheet, read(sheet)).angleDegrees()).isCloseTo(0, within(LEVEL_DEGREES));
    }

    @Test
    void readsPortraitSheets() {
        DrawnSheet sheet = aSheet().on(new SheetFormat("A4", 210, 297, 100)).scannedAt(200).turned(90.6);

        assertLevelAndTrue(sheet, read(sheet));
    }

    @Test
    void readsLargerSheets() {
        DrawnSheet sheet = aSheet().on(new SheetFormat("A3", 420, 297, 100)).scannedAt(200).turned(-0.7);

        assertLevelAndTrue(sheet, read(sheet));
    }

    @ParameterizedTest
    @ValueSource(ints = {15, 80, 255})
    void correctsStretchWhereTheEdgesOfThePaperShowIt(int surround) {
        DrawnSheet sheet = aSheet().scannedAt(200).turned(0.9).stretchedUpwards(0.005).surroundedBy(12, surround);

        LevelPage page = read(sheet);

        assertThat(stretch(sheet, page)).isCloseTo(1, within(0.0012));
        assertThat(page.calibration().stretchUncertaintyPercent()).isLessThan(0.15);
    }

    @Test
    void readsSheetsOfA2() {
        DrawnSheet sheet = aSheet().on(new SheetFormat("A2", 594, 420, 100)).scannedAt(150).turned(0.5);

        assertLevelAndTrue(sheet, read(sheet));
    }

    @Test
    void correctsStretchByASecondUprightBar() {
        DrawnSheet sheet = aSheet().scannedAt(200).stretchedUpwards(0.005).withUprightBar();

        LevelPage page = read(sheet);

        assertThat(stretch(sheet, page)).isCloseTo(1, within(0.0016));
        assertThat(page.calibration().stretchUncertaintyPercent()).isLessThan(0.2);
    }

    @Test
    void statesTheDoubtWhereNothingShowsAStretch() {
        LevelPage page = read(aSheet().scannedAt(200));

        assertThat(page.calibration().stretchUncertaintyPercent()).isCloseTo(0.3, within(0.05));
    }

    @Test
    void calibratesFromTheEdgesOfThePaperWhereThereIsNoBar() {
        DrawnSheet sheet = aSheet().scannedAt(200).turned(181).surroundedBy(10, 30).withoutBar();

        LevelPage page = read(sheet);

        assertThat(page.calibration().source()).isEqualTo(Source.PAGE_EDGES);
        assertThat(page.warnings()).singleElement().asString().contains("No reference bar");
        assertThat(page.bar()).isEmpty();
        assertThat(level(sheet, page).angleDegrees()).isCloseTo(0, within(LEVEL_DEGREES));
        assertThat(level(sheet, page).length()).isCloseTo(100, within(0.1));
    }

    @Test
    void seesTheEdgesOfThePaperBesideANarrowStripOfLid() {
        DrawnSheet sheet = aSheet().scannedAt(200).turned(180).surroundedBy(2, 60).withoutResolution().withoutBar();

        LevelPage page = read(sheet);

        assertThat(page.calibration().source()).isEqualTo(Source.PAGE_EDGES);
        assertThat(level(sheet, page).length()).isCloseTo(100, within(0.1));
    }

    /** The rim of the shadow is as clear as the paper's edge once lines are closed up, and lies five percent farther out. */
    @ParameterizedTest
    @CsvSource({"8.5, 0.6, true", "8.5, 0.6, false", "9, 1.6, true", "9, 1.6, false"})
    void findsThePaperWithinTheShadowThatItThrowsOnALid(double lidMm, double turn, boolean bar) {
        DrawnSheet sheet = aSheet().on(new SheetFormat("A4", 210, 297, 100))
                .scannedAt(200)
                .turned(turn)
                .surroundedBy(lidMm, 243)
                .throwingShadow(55);

        LevelPage page = read(bar ? sheet : sheet.withoutBar());

        assertThat(page.calibration().source()).isEqualTo(bar ? Source.REFERENCE_BAR : Source.PAGE_EDGES);
        assertThat(level(sheet, page).length()).isCloseTo(100, within(0.15));
        assertThat(stretch(sheet, page)).isCloseTo(1, within(0.0012));
    }

    @Test
    void takesTheBarThatTheResolutionBearsOutWhereTheSheetIsOfAnotherFormat() {
        SheetFormat smaller = new SheetFormat("A5", 210, 148, 100);
        DrawnSheet sheet = aSheet().on(smaller).scannedAt(200).turned(0.4).surroundedBy(30, 30);

        LevelPage page = read(sheet, new SheetFormat("A4", 297, 210, 100));

        assertThat(page.calibration().source()).isEqualTo(Source.REFERENCE_BAR);
        assertThat(level(sheet, page).length()).isCloseTo(100, within(LENGTH_SHARE * 100));
        assertThat(page.warnings()).anyMatch(warning -> warning.contains("141."));
    }

    @Test
    void leavesOpenWhatLiesBetweenEdgesAndResolutionWhereThereIsNoBar() {
        DrawnSheet sheet = aSheet().scannedAt(200).stating(210).turned(0.4).surroundedBy(10, 30).withoutBar();

        LevelPage page = read(sheet);

        assertThat(page.calibration().source()).isEqualTo(Source.PAGE_EDGES);
        assertThat(page.calibration().uncertaintyPercent()).as("half of five percent").isCloseTo(2.4, within(0.2));
        assertThat(page.warnings()).hasSize(2).anyMatch(warning -> warning.contains("resolution that the file states"));
    }

    @Test
    void saysWhereBarAndEdgesDisagree() {
        DrawnSheet sheet = aSheet().scannedAt(200).surroundedBy(10, 30).withBarOf(97.5);

        LevelPage page = read(sheet);

        assertThat(page.warnings()).singleElement().asString().contains("97.5 mm").contains("from the bar");
        assertThat(page.calibration().source()).isEqualTo(Source.REFERENCE_BAR);
        assertThat(page.calibration().uncertaintyPercent()).as("half of what lies between them").isCloseTo(1.28, within(0.1));
    }

    /** A title block begins 8 mm before the bar's end; a letter's foot lies in line with the bar, its stem is no tick. */
    @Test
    void takesTheTickThatThePaperBearsOutForTheBarsEnd() {
        DrawnSheet sheet = aSheet().scannedAt(200)
                .turned(0.4)
                .surroundedBy(10, 30)
                .with(
                        Segment.between(122, 5, 122, 38),
                        Segment.between(122, 38, 287, 38),
                        Segment.between(130, 25, 133.6, 25),
                        Segment.between(133.6, 23, 133.6, 28.5));

        assertReadFromBar(sheet);
        assertThat(read(sheet).warnings()).isEmpty();
        assertThat(read(sheet).calibration().uncertaintyPercent()).isLessThan(0.2);
    }

    /** The same where no edge is in the picture: the resolution that the file states bears the tick out, and leaves more open. */
    @Test
    void takesTheTickThatTheStatedResolutionBearsOutForTheBarsEnd() {
        DrawnSheet sheet = aSheet().scannedAt(200)
                .turned(0.4)
                .with(
                        Segment.between(122, 5, 122, 38),
                        Segment.between(122, 38, 287, 38),
                        Segment.between(130, 25, 133.6, 25),
                        Segment.between(133.6, 22, 133.6, 28));

        assertReadFromBar(sheet);
        assertThat(read(sheet).calibration().uncertaintyPercent()).isGreaterThan(0.5);
    }

    /** A tick that was set off wrongly at first and left standing, and nothing else that tells how large the sheet is. */
    @Test
    void statesWhatASecondTickLeavesOpen() {
        DrawnSheet sheet = aSheet().scannedAt(200).with(
                Segment.between(130, 25, 133.6, 25), Segment.between(133.6, 22, 133.6, 28));

        LevelPage page = read(sheet);

        assertThat(page.calibration().source()).isEqualTo(Source.REFERENCE_BAR);
        assertThat(page.calibration().uncertaintyPercent()).isGreaterThan(1);
        assertThat(read(aSheet().scannedAt(200)).calibration().uncertaintyPercent()).isLessThan(0.2);
    }

    @Test
    void refusesSheetWithoutBarAndEdges() {
        assertThat(refusal(aSheet().scannedAt(200).withoutBar())).contains("no reference bar").contains("100 mm");
    }

    @Test
    void readsWhatAScanThatIsCutOffShowsAndSaysSo() {
        LevelPage page = read(aSheet().scannedAt(200).turned(0.4).cutOffAfter(0.62));

        assertThat(page.cutOff()).isTrue();
        assertThat(page.calibration().source()).isEqualTo(Source.REFERENCE_BAR);
        assertThat(page.warnings()).singleElement().asString().contains("part of the sheet is not in this picture");
    }

    @Test
    void saysOfNoWholeSheetThatItIsCutOff() {
        assertThat(read(aSheet().scannedAt(200).turned(1.4)).cutOff()).isFalse();
        assertThat(read(aSheet().scannedAt(200).turned(91).surroundedBy(8, 30)).cutOff()).isFalse();
    }

    /** The bar went with the right part; the sheet's upper and lower edge are 210 mm apart. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 180})
    void calibratesByTwoOppositeEdgesWhereTheBarIsCutOff(double turn) {
        DrawnSheet sheet = aSheet().scannedAt(200).turned(turn).surroundedBy(9, 30).withoutBar();
        sheet.cutOffAfter(0.75);

        LevelPage page = read(sheet);

        assertThat(page.cutOff()).isTrue();
        assertThat(page.calibration().source()).isEqualTo(Source.PAGE_EDGES);
        assertThat(page.calibration().uncertaintyPercent()).isGreaterThan(0.3);
        assertThat(level(sheet, page).length()).isCloseTo(100, within(0.3));
        assertThat(level(sheet, page).angleDegrees()).isCloseTo(0, within(LEVEL_DEGREES));
        assertThat(page.warnings()).hasSize(2);
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void tellsThatTheBarIsCutOffWhereAPartOfTheSheetIsMissing(boolean resolutionIsStated) {
        DrawnSheet sheet = aSheet().scannedAt(200).withoutBar().cutOffAfter(0.75);

        assertThat(refusal(resolutionIsStated ? sheet : sheet.withoutResolution()))
                .startsWith("Only a part of the sheet is in this picture")
                .contains("100 mm");
    }

    /** As a broad pen leaves them on a fax. */
    @Test
    void findsABarWithBroadTicks() {
        assertReadFromBar(aSheet().scannedAt(200).pencilled(1, 1.2));
    }

    /** Letters of like rows stand under each other and in line, which makes long lines of them. */
    @ParameterizedTest
    @ValueSource(strings = {"Serif", "SansSerif", "Monospaced"})
    void takesAPageOfLikeRowsForWriting(String font) {
        SheetReading reading = new SheetReader().read(writtenPage(font), aSheet().format());

        assertThat(reading).isInstanceOf(SheetReading.Unreadable.class);
        assertThat(((SheetReading.Unreadable) reading).reason()).startsWith("This page shows writing but no drawing.");
    }

    private static ScanPage writtenPage(String font) {
        BufferedImage page = new BufferedImage(1654, 2339, BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D graphics = page.createGraphics();
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, page.getWidth(), page.getHeight());
        graphics.setColor(Color.DARK_GRAY);
        graphics.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        graphics.setFont(new Font(font, Font.PLAIN, 36));
        for (int row = 0; row < 40; row++) {
            graphics.drawString("THE WALL PLATE LIES FLUSH WITH THE INNER FACE", 160, 200 + 47 * row);
        }
        graphics.dispose();
        return new ScanPage("written.png", 1, new Picture(1654, 2339, Scans.grey(page), 200, 200));
    }

    @Test
    void refusesDrawingWithoutSlopes() {
        assertThat(refusal(aSheet().scannedAt(200).withoutSlopes())).contains("no long sloping lines");
    }

    @Test
    void refusesHopelessBlurWithItsOwnSentence() {
        Segment[] hatching = IntStream.range(0, 12)
                .mapToObj(i -> Segment.between(230, 20 + 12 * i, 285, 20 + 12 * i))
                .toArray(Segment[]::new);

        assertThat(refusal(aSheet().scannedAt(200).with(hatching).blurredBy(8)))
                .contains("too blurred")
                .contains("scan it again");
    }

    @Test
    void saysOfSharpButEmptyPageThatItIsNotBlurred() {
        assertThat(refusal(aSheet().scannedAt(200).withoutSlopes())).doesNotContain("blurred");
    }

    @Test
    void refusesTooCoarseScanAndSaysWhatIsNeeded() {
        assertThat(refusal(aSheet().scannedAt(60))).contains("60 dots to the inch").contains("300 dpi");
    }

    @Test
    void saysOfPictureOfFewPixelsThatItIsNoSheet() {
        for (int sidePx : new int[] {1, 3, 200}) {
            byte[] white = new byte[sidePx * sidePx];
            Arrays.fill(white, (byte) 255);
            ScanPage page = new ScanPage("icon.png", 1, new ScanPage.Picture(sidePx, sidePx, white, 0, 0));

            assertThat(((SheetReading.Unreadable) new SheetReader().read(page, aSheet().format())).reason())
                    .contains("only %1$d x %1$d pixels".formatted(sidePx))
                    .doesNotContain("inch");
        }
    }

    @Test
    void mapsPageToScanAndBackWithoutLoss() {
        LevelPage page = read(aSheet().scannedAt(200).turned(1.3));
        Point point = new Point(123.4, 56.7);

        Point back = page.toScan().inverse().apply(page.toScan().apply(point));

        assertThat(back.distanceTo(point)).isLessThan(1e-6);
    }

    @Test
    void keepsInkWhereTheMapSaysThatLinesAre() {
        DrawnSheet sheet = aSheet().scannedAt(300).turned(2.2);

        LevelPage page = read(sheet);

        sheet.lines().forEach(line -> {
            Point middle = onPage(sheet, page, line.midpoint());
            assertThat(page.ink().at(middle.x(), middle.y()))
                    .as("ink at the middle of %s", line)
                    .isGreaterThan(80);
        });
    }

    @Test
    void givesTheSameBytesEachTime() {
        DrawnSheet sheet = aSheet().scannedAt(150).turned(1);

        assertThat(read(sheet).ink().bytes()).isEqualTo(read(sheet).ink().bytes());
    }

    private static LevelPage read(DrawnSheet sheet) {
        return read(sheet, sheet.format());
    }

    private static LevelPage read(DrawnSheet sheet, SheetFormat expected) {
        SheetReading reading = new SheetReader().read(sheet.page(), expected);
        assertThat(reading).as("%s", reading).isInstanceOf(SheetReading.Readable.class);
        return ((SheetReading.Readable) reading).page();
    }

    private static String refusal(DrawnSheet sheet) {
        SheetReading reading = new SheetReader().read(sheet.page(), sheet.format());
        assertThat(reading).isInstanceOf(SheetReading.Unreadable.class);
        return ((SheetReading.Unreadable) reading).reason();
    }

    private static void assertReadFromBar(DrawnSheet sheet) {
        LevelPage page = read(sheet);
        assertLevelAndTrue(sheet, page);
        assertThat(page.calibration().source()).isEqualTo(Source.REFERENCE_BAR);
    }

    private static void assertLevelAndTrue(DrawnSheet sheet, LevelPage page) {
        Vector bar = level(sheet, page);
        double nominal = sheet.format().referenceBarMm();
        assertThat(bar.angleDegrees()).as("degrees of a level line").isCloseTo(0, within(LEVEL_DEGREES));
        assertThat(bar.length()).as("millimetres of the bar").isCloseTo(nominal, within(LENGTH_SHARE * nominal));
        assertThat(stretch(sheet, page)).as("upright against level scale").isCloseTo(1, within(0.0012));
    }

    /** The bar as drawn, or a level piece of 100 mm, on the page. */
    private static Vector level(DrawnSheet sheet, LevelPage page) {
        return onPage(sheet, page, sheet.barOnSheet().end())
                .minus(onPage(sheet, page, sheet.barOnSheet().start()));
    }

    private static double stretch(DrawnSheet sheet, LevelPage page) {
        Point middle = new Point(sheet.format().widthMm() / 2, sheet.format().heightMm() / 2);
        Point centre = onPage(sheet, page, middle);
        double right = onPage(sheet, page, middle.plus(new Vector(50, 0))).distanceTo(centre);
        double up = onPage(sheet, page, middle.plus(new Vector(0, 50))).distanceTo(centre);
        return up / right;
    }

    private static Point onPage(DrawnSheet sheet, LevelPage page, Point onSheet) {
        return page.toScan().inverse().apply(sheet.pixel(onSheet.x(), onSheet.y()));
    }
}
