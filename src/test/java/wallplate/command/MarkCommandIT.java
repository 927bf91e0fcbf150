package wallplate.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import wallplate.Needed;

/** The program as it is handed out, run as a process of its own on sheets and on what is none. */
class MarkCommandIT {

    private static final Path JAR = Path.of("target/wallplate.jar");
    private static final Path SHEETS = Path.of("../shared/scans/dev/boathouse-eaves");

    @TempDir
    private Path folder;

    /** What a run of the program left behind. */
    private record Run(int status, String out, List<String> errors) {}

    @BeforeAll
    static void jarIsBuilt() {
        Needed.holds(Files.isRegularFile(JAR), "no " + JAR + ": this check runs after packaging");
    }

    @Test
    void marksSheetsAndSaysWhatItCouldNotRead() throws Exception {
        Assumptions.assumeTrue(Files.isDirectory(SHEETS), "no test sheets at " + SHEETS + ": this check is left out");
        Path bad = badScans();
        Run run = mark(
                SHEETS.resolve("task.yml"),
                SHEETS.resolve("scans/sheet-008.pdf"),
                SHEETS.resolve("scans/sheet-028.png"),
                copy(SHEETS.resolve("scans/sheet-016.jpg"), "sheet-008.jpg"),
                bad);
        assertThat(run.status()).isEqualTo(3);
        assertThat(run.out()).isEmpty();
        for (String name : List.of("sheet-008", "sheet-028", "sheet-008-2")) {
            JsonNode result = result(name);
            assertThat(result.path("status").asString()).as(name).isEqualTo("read");
            assertThat(result.path("measurements").size()).isEqualTo(33);
            assertThat(result.path("marks").size()).isEqualTo(33);
            assertThat(pdfText(name)).contains("of 33 marks").contains("A drawing exercise, not a design");
        }
        for (String name : List.of("bomb", "cut-short", "empty", "locked", "text")) {
            JsonNode result = result(name);
            assertThat(result.path("status").asString()).as(name).isEqualTo("unreadable");
            assertThat(result.path("reason").asString()).as(name).isNotBlank();
            assertThat(pdfText(name)).contains("could not be read").contains("What to do");
        }
        assertThat(Files.readAllLines(folder.resolve("out/mark-sheet.csv"))).hasSize(9);
        assertThat(run.errors())
                .as("a line for each sheet, one warning for the shared name")
                .hasSize(9);
        assertThat(run.errors())
                .filteredOn(line -> line.startsWith("warning:"))
                .singleElement()
                .asString()
                .contains("sheet-008-2");
    }

    @Test
    void returnsNoughtWhereEverySheetWasReadAndRepeatsItsBytes() throws Exception {
        Assumptions.assumeTrue(Files.isDirectory(SHEETS), "no test sheets at " + SHEETS + ": this check is left out");
        Path scan = SHEETS.resolve("scans/sheet-028.png");
        Run first = mark(SHEETS.resolve("task.yml"), scan);
        byte[] json = Files.readAllBytes(folder.resolve("out/sheet-028.json"));
        byte[] pdf = Files.readAllBytes(folder.resolve("out/sheet-028.pdf"));
        Run second = mark(SHEETS.resolve("task.yml"), scan);
        assertThat(first.status()).isZero();
        assertThat(first.errors()).hasSize(1);
        assertThat(second.errors()).hasSize(2).first().asString().contains("earlier run");
        assertThat(Files.readAllBytes(folder.resolve("out/sheet-028.json"))).isEqualTo(json);
        assertThat(Files.readAllBytes(folder.resolve("out/sheet-028.pdf"))).isEqualTo(pdf);
    }

    @Test
    void refusesAScaleWithoutQuotes() throws Exception {
        Path task = Files.writeString(folder.resolve("task.yml"), "id: a\nscale: 1:20\n");
        Run run = mark(task, Files.writeString(folder.resolve("scan.png"), "text"));
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.errors()).anyMatch(line -> line.startsWith("task.yml: scale: ") && line.contains("quot"));
        assertThat(folder.resolve("out/scan.json")).doesNotExist();
    }

    private Path badScans() throws IOException {
        Path bad = Files.createDirectory(folder.resolve("bad"));
        Files.writeString(bad.resolve("text.png"), "This is not a picture.");
        Files.write(bad.resolve("empty.png"), new byte[0]);
        byte[] pdf = Files.readAllBytes(SHEETS.resolve("scans/sheet-008.pdf"));
        Files.write(bad.resolve("cut-short.pdf"), Arrays.copyOf(pdf, 400));
        Files.write(bad.resolve("locked.pdf"), lockedPdf());
        Files.write(bad.resolve("bomb.png"), hugePng(40_000));
        return bad;
    }

    private static byte[] lockedPdf() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (PDDocument document = new PDDocument()) {
            document.addPage(new PDPage());
            document.protect(new StandardProtectionPolicy("owner", "reader", new AccessPermission()));
            document.save(bytes);
        }
        return bytes.toByteArray();
    }

    /** A small file that unpacks to a square picture of one bit a pixel. */
    private static byte[] hugePng(int sidePx) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream png = new DataOutputStream(bytes);
        png.write(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'});
        ByteArrayOutputStream header = new ByteArrayOutputStream();
        DataOutputStream fields = new DataOutputStream(header);
        fields.writeInt(sidePx);
        fields.writeInt(sidePx);
        fields.write(new byte[] {1, 0, 0, 0, 0});
        chunk(png, "IHDR", header.toByteArray());
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (DeflaterOutputStream rows = new DeflaterOutputStream(packed)) {
            byte[] row = new byte[1 + sidePx / 8];
            for (int index = 0; index < sidePx; index++) {
                rows.write(row);
            }
        }
        chunk(png, "IDAT", packed.toByteArray());
        chunk(png, "IEND", new byte[0]);
        return bytes.toByteArray();
    }

    private static void chunk(DataOutputStream png, String type, byte[] content) throws IOException {
        byte[] name = type.getBytes(StandardCharsets.US_ASCII);
        CRC32 check = new CRC32();
        check.update(name);
        check.update(content);
        png.writeInt(content.length);
        png.write(name);
        png.write(content);
        png.writeInt((int) check.getValue());
    }

    private Path copy(Path scan, String name) throws IOException {
        return Files.copy(scan, folder.resolve(name));
    }

    private Run mark(Path task, Path... scans) throws Exception {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-jar",
                JAR.toString(),
                "mark",
                "--task",
                task.toString(),
                "--out",
                folder.resolve("out").toString()));
        Stream.of(scans).map(Path::toString).forEach(command::add);
        Path out = folder.resolve("stdout.txt");
        Path errors = folder.resolve("stderr.txt");
        Process process = new ProcessBuilder(command)
                .redirectOutput(out.toFile())
                .redirectError(errors.toFile())
                .start();
        assertThat(process.waitFor(3, TimeUnit.MINUTES)).as("the command ends").isTrue();
        return new Run(process.exitValue(), Files.readString(out), Files.readAllLines(errors));
    }

    private JsonNode result(String name) throws IOException {
        return JsonMapper.builder().build().readTree(Files.readString(folder.resolve("out/" + name + ".json")));
    }

    private String pdfText(String name) throws IOException {
        try (PDDocument document =
                Loader.loadPDF(folder.resolve("out/" + name + ".pdf").toFile())) {
            return new PDFTextStripper().getText(document);
        }
    }
}
