package wallplate.tables;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TableFileTest {

    private static final Table ODD_TEXTS = new Table(
            "Odd [texts]",
            List.of("name", "number"),
            List.of(
                    List.of(Cell.of("=1+1"), Cell.of("007")),
                    List.of(Cell.of("-Ada, \"the first\""), Cell.of("@home")),
                    List.of(Cell.of("'=x"), Cell.of("Zoë\nLind")),
                    List.of(Cell.of("O'Neill"), Cell.of(new BigDecimal("21.50")))));

    @Test
    void readsBackFromCsvWhatItWrote() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        TableFile.writeCsv(ODD_TEXTS, out);

        assertThat(cells(TableFile.read(out.toByteArray())))
                .containsExactly(
                        List.of("name", "number"),
                        List.of("=1+1", "007"),
                        List.of("-Ada, \"the first\"", "@home"),
                        List.of("'=x", "Zoë\nLind"),
                        List.of("O'Neill", "21.50"));
    }

    @Test
    void readsBackFromXlsxWhatItWrote() throws IOException {
        assertThat(cells(TableFile.read(workbook(ODD_TEXTS))))
                .containsExactly(
                        List.of("name", "number"),
                        List.of("=1+1", "007"),
                        List.of("-Ada, \"the first\"", "@home"),
                        List.of("'=x", "Zoë\nLind"),
                        List.of("O'Neill", "21.5"));
    }

    /** OWASP, CSV Injection: no cell may begin with = + - @, a tab or a carriage return. */
    @ParameterizedTest
    @ValueSource(strings = {"=cmd()", "+1", "-1", "@sum", "\tx", "\rx"})
    void writesNoTextThatASpreadsheetTakesForAFormula(String text) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        TableFile.writeCsv(new Table("x", List.of("a"), List.of(List.of(Cell.of(text)))), out);

        String line = out.toString(StandardCharsets.UTF_8).split("\r\n", 2)[1];
        assertThat(line.replace("\"", "")).startsWith("'");
    }

    /** ECMA-376, part 1, 18.3.1.4: a cell without a type, or of type n, is a number; 18.3.1.40: f is a formula. */
    @Test
    void writesNumbersAsNumbersAndTextsAsTextsInXlsx() throws IOException {
        String sheet = part(workbook(ODD_TEXTS), "xl/worksheets/sheet1.xml");

        assertThat(sheet).containsPattern("<c r=\"B5\"[^>]*(?<!t=\"s\")><v>21\\.50?</v></c>");
        assertThat(sheet).containsPattern("<c r=\"A2\"[^>]*t=\"(s|inlineStr)\"");
        assertThat(sheet).doesNotContain("<f>");
    }

    /** Paper 9 of ECMA-376, part 1, 18.3.1.63 (from memory): 210 by 297 mm. */
    @Test
    void printsOnA4() throws IOException {
        assertThat(part(workbook(ODD_TEXTS), "xl/worksheets/sheet1.xml")).contains("paperSize=\"9\"");
    }

    @Test
    void readsSemicolonsAndTabsAsSpreadsheetsWriteThem() {
        assertThat(cells(csv("name;number\nLind, Bo;12\n"))).contains(List.of("Lind, Bo", "12"));
        assertThat(cells(csv("Bo\t12\n\nCem\t13"))).containsExactly(List.of("Bo", "12"), List.of("Cem", "13"));
    }

    @Test
    void namesTheLineWhereAQuotationMarkIsNotClosedAndWhereLettersAreNotUtf8() {
        assertThat(faultLine(csv("Ada,1\nBo,2\n\"Cem,3\n"))).isEqualTo(3);
        assertThat(faultLine(TableFile.read("Ada,1\nZo\u00eb,2\n".getBytes(StandardCharsets.ISO_8859_1)))).isEqualTo(2);
    }

    @Test
    void keepsTheLineOfEachRow() {
        TableReading.Read read = (TableReading.Read) csv("name\n\n\"Ada\nNkosi\"\nBo\n");

        assertThat(read.rows()).extracting(Row::line).containsExactly(1, 3, 5);
    }

    @Test
    void refusesWhatIsNoWorkbookAndWhatUnpacksWithoutEnd() throws IOException {
        assertThat(TableFile.read("PK\u0003\u0004 and no more".getBytes(StandardCharsets.ISO_8859_1)))
                .isInstanceOf(TableReading.Refused.class);
        assertThat(TableFile.read(zipOfNoughts(80_000_000))).isInstanceOf(TableReading.Refused.class);
        assertThat(TableFile.read(new byte[6_000_000])).isInstanceOf(TableReading.Refused.class);
    }

    private static byte[] zipOfNoughts(int size) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.putNextEntry(new ZipEntry("xl/worksheets/sheet1.xml"));
            zip.write(new byte[size]);
        }
        return out.toByteArray();
    }

    private static byte[] workbook(Table table) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        TableFile.writeXlsx(table, out);
        return out.toByteArray();
    }

    private static String part(byte[] workbook, String name) throws IOException {
        try (ZipFile zip = ZipFile.builder().setByteArray(workbook).get();
                InputStream part = zip.getInputStream(zip.getEntry(name))) {
            return new String(part.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static TableReading csv(String text) {
        return TableFile.read(text.getBytes(StandardCharsets.UTF_8));
    }

    private static List<List<String>> cells(TableReading reading) {
        assertThat(reading).isInstanceOf(TableReading.Read.class);
        return ((TableReading.Read) reading).rows().stream().map(Row::cells).toList();
    }

    private static int faultLine(TableReading reading) {
        assertThat(reading).isInstanceOf(TableReading.Refused.class);
        return ((TableReading.Refused) reading).faults().get(0).line();
    }
}
