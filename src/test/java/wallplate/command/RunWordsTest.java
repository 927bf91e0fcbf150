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
import wallplate.task.Tasks;

/** What the command says of each sheet, in the language that was asked for. */
class RunWordsTest {

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
        Path task = Files.writeString(folder.resolve("task.yml"), Tasks.BOATHOUSE);
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
