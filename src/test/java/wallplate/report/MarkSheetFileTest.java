package wallplate.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The mark sheet of a set (RFC 4180 for the quoting and the line ends). */
class MarkSheetFileTest {

    @Test
    void hasALineForEverySheetAndAColumnForEveryCriterion() {
        MarkSheetFile file = new MarkSheetFile();
        file.add("sheet-01", ReportSheets.read("sheet-01.png", 1));
        file.add("sheet-02", ReportSheets.unreadable("sheet-02.png", "The page is blank."));
        String[] lines = file.write().split("\r\n");
        assertThat(lines).hasSize(3);
        assertThat(lines[0])
                .isEqualTo("name,scan,page,status,awarded,available,undecided,guideline,reason,"
                        + "roof-pitch,wall-plate-crossed,gutter-width,brander-spacing,support-count,drawing-eaves");
        assertThat(lines[1])
                .startsWith("sheet-01,sheet-01.png,1,read,3,6,1,default-")
                .endsWith(",,1,1,0,?,1,0");
        assertThat(lines[2]).isEqualTo("sheet-02,sheet-02.png,1,unreadable,,,,,The page is blank.,,,,,,");
    }

    @Test
    void keepsASpreadsheetFromTakingANameForAFormula() {
        MarkSheetFile file = new MarkSheetFile();
        file.add("=1+2", ReportSheets.unreadable("@sum(a1).png", "Found \"text\", no drawing."));
        assertThat(file.write().split("\r\n")[1])
                .startsWith("'=1+2,'@sum(a1).png,1,")
                .contains("\"Found \"\"text\"\", no drawing.\"");
    }
}
