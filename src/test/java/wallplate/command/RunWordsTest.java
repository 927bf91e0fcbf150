package wallplate.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** What the command says of each sheet, in the language that was asked for. */
class RunWordsTest {

    private static final String TASK =
            """
            id: boathouse-eaves
            title: Section through the eaves of the boathouse
            detail: eaves-section
            scale: "1:20"
            eaves: right
            pitch: 26
            wall: {thickness: 230, plate-flush: inner}
            wall-plate: {width: 100, depth: 50}
            tie-beam: {depth: 150}
            rafter: {depth: 150, overhang: 400}
            support: {name: purlin, width: 50, depth: 75, spacing: 900}
            covering: {name: corrugated sheeting, thickness: 40, projection: 60}
            break-line: {inside: 2400}
            sheet: {size: A4, orientation: landscape, reference-bar: 100}
            """;

    @TempDir
    private Path folder;

    @Test
    void saysInGermanWhyAFileCannotBeReadAndWhatWasPassedOver() throws Exception {
        assertThat(run("de"))
                .contains("Warnung: ", "wird übergangen")
                .contains("empty.png: nicht zu lesen. Diese Datei ist leer.");
    }

    @Test
    void saysItInEnglishWhereItHasNoWordsInALanguage() throws Exception {
        assertThat(run("fi")).contains("is passed over").contains("empty.png: could not be read. This file is empty.");
    }

    private String run(String language) throws Exception {
        Path scans = Files.createDirectories(folder.resolve("scans"));
        Files.write(scans.resolve("empty.png"), new byte[0]);
        Files.writeString(scans.resolve("notes.md"), "no scan");
        Path task = Files.writeString(folder.resolve("task.yml"), TASK);
        StringWriter said = new StringWriter();
        int status = new CommandLine(new MarkCommand(new PrintWriter(said, true)))
                .execute(
                        "--task", task.toString(),
                        "--out", folder.resolve("out").toString(),
                        "--language", language,
                        scans.toString());
        assertThat(status).isEqualTo(MarkCommand.SOME_UNREADABLE);
        return said.toString();
    }
}
