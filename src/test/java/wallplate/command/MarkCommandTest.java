package wallplate.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What the command says and returns for arguments and task files that are wrong: exit status 2 and every fault at
 * once.
 */
class MarkCommandTest {

    private static final String TASK =
            """
            id: test-eaves
            title: Section through the eaves of a test
            detail: eaves-section
            scale: %s
            eaves: right
            pitch: %s
            wall: {thickness: 230, plate-flush: inner}
            wall-plate: {width: 100, depth: 50}
            rafter: {depth: 150, overhang: 400}
            support: {name: purlin, width: 50, depth: 75, spacing: 900}
            covering: {name: corrugated sheeting, thickness: 40, projection: 60}
            break-line: {inside: 2400}
            sheet: {size: A4, orientation: landscape, reference-bar: 100}
            %s
            """;

    @TempDir
    private Path folder;

    private final StringWriter said = new StringWriter();

    @Test
    void refusesMissingArguments() {
        assertThat(run("mark")).isEqualTo(2);
        assertThat(said.toString())
                .contains("--task=TASK")
                .contains("--out=DIR")
                .contains("SCAN");
    }

    @Test
    void namesEveryFaultOfATaskFileAtOnce() throws IOException {
        assertThat(mark(TASK.formatted("1:20", "90", ""))).isEqualTo(2);
        assertThat(said.toString()).contains("scale: ").contains("pitch: found 90");
    }

    @Test
    void namesEveryFaultOfAGuidelineAtOnce() throws IOException {
        String marking =
                """
                marking:
                  criteria:
                    - {measure: gutter.width}
                    - {measure: roof.pitch, marks: 1.3}
                """;
        assertThat(mark(TASK.formatted("\"1:20\"", "26", marking))).isEqualTo(2);
        assertThat(said.toString())
                .contains("marking.criteria[1].measure: found gutter.width")
                .contains("marking.criteria[2].marks: found 1.3; accepted: marks in steps of a half");
    }

    @Test
    void refusesATaskFileThatIsNoText() throws IOException {
        Path task = Files.write(folder.resolve("task.yml"), new byte[] {(byte) 0xff, (byte) 0xfe, 0, 1});
        assertThat(run("mark", "--task", task.toString(), "--out", out(), scan()))
                .isEqualTo(2);
        assertThat(said.toString()).contains("not a UTF-8 text file");
    }

    @Test
    void refusesScansThatAreNotThereAndFoldersWithoutScans() throws IOException {
        Path task = Files.writeString(folder.resolve("task.yml"), TASK.formatted("\"1:20\"", "26", ""));
        Path empty = Files.createDirectory(folder.resolve("empty"));
        assertThat(run("mark", "--task", task.toString(), "--out", out(), "nowhere.png", empty.toString()))
                .isEqualTo(2);
        assertThat(said.toString()).contains("nowhere.png is not there").contains("empty holds no scans");
    }

    @Test
    void refusesAnOutputFolderThatIsAFile() throws IOException {
        Path task = Files.writeString(folder.resolve("task.yml"), TASK.formatted("\"1:20\"", "26", ""));
        Path file = Files.writeString(folder.resolve("taken"), "");
        assertThat(run("mark", "--task", task.toString(), "--out", file.toString(), scan()))
                .isEqualTo(2);
        assertThat(said.toString()).contains("--out: ").contains("a folder that can be written to");
    }

    private int mark(String yaml) throws IOException {
        Path task = Files.writeString(folder.resolve("task.yml"), yaml);
        return run("mark", "--task", task.toString(), "--out", out(), scan());
    }

    private String out() {
        return folder.resolve("out").toString();
    }

    private String scan() throws IOException {
        return Files.writeString(folder.resolve("scan.png"), "no picture").toString();
    }

    private int run(String... arguments) {
        return CommandLine.run(new PrintWriter(said, true), arguments);
    }
}
