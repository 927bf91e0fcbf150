package wallplate.records.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class FolderShelfTest extends ScanShelfTest {

    @Override
    ScanShelf shelf() {
        return new FolderShelf(folder.resolve("shelf"), Clock.systemUTC());
    }

    @Test
    void datesContentAnewWhenItIsLaidDownAgain() throws IOException {
        ScanShelf shelf = shelf();
        Path content = Files.writeString(folder.resolve("content"), "abc");
        shelf.lay("aa01", content);
        Files.setLastModifiedTime(folder.resolve("shelf/aa/aa01"), FileTime.from(Instant.now().minusSeconds(7200)));
        assertThat(names(shelf, Instant.now().minusSeconds(3600))).containsExactly("aa01");

        shelf.lay("aa01", content);

        assertThat(names(shelf, Instant.now().minusSeconds(3600))).isEmpty();
    }

    @Test
    void clearsAwayWhatACrashLeftHalfWritten() throws IOException {
        Path half = folder.resolve("shelf/arriving-1.part");
        Files.createDirectories(half.getParent());
        Files.writeString(half, "hal");

        assertThat(names(shelf(), Instant.now().plusSeconds(60))).isEmpty();
        assertThat(half).doesNotExist();
    }

    private static List<String> names(ScanShelf shelf, Instant before) throws IOException {
        List<String> names = new ArrayList<>();
        shelf.forEachLaidBefore(before, names::add);
        return names;
    }
}
