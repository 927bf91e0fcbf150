package wallplate.records.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wallplate.records.ScanStore;

/** What every shelf must do; each kind of shelf is one subclass. */
abstract class ScanShelfTest {

    /** SHA-256 of "abc", FIPS 180-2, appendix B.1. */
    private static final String ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    @TempDir
    Path folder;

    private ScanStore store;

    abstract ScanShelf shelf() throws Exception;

    @BeforeEach
    void anEmptyStore() throws Exception {
        store = new HashedScanStore(shelf());
    }

    @Test
    void namesContentByItsHashAndGivesItBack() throws IOException {
        ScanStore.Kept kept = put("abc");

        assertThat(kept).isEqualTo(new ScanStore.Kept(ABC, 3));
        try (InputStream content = store.open(ABC)) {
            assertThat(content.readAllBytes()).isEqualTo("abc".getBytes(StandardCharsets.US_ASCII));
        }
    }

    @Test
    void copiesContentIntoAFile() throws IOException {
        put("abc");

        store.copyTo(ABC, folder.resolve("copy"));

        assertThat(folder.resolve("copy")).hasContent("abc");
    }

    @Test
    void keepsTheSameContentOnce() throws IOException {
        put("abc");
        put("abc");

        assertThat(names(Instant.now().plusSeconds(3600))).containsExactly(ABC);
    }

    @Test
    void saysThatANameIsNotThere() {
        assertThatThrownBy(() -> store.open(ABC)).isInstanceOf(NoSuchFileException.class);
    }

    @Test
    void deletesAndDoesNotMindWhatIsNotThere() throws IOException {
        put("abc");

        store.delete(ABC);
        store.delete(ABC);

        assertThatThrownBy(() -> store.open(ABC)).isInstanceOf(NoSuchFileException.class);
    }

    @Test
    void tellsWhatWasPutBeforeAMoment() throws IOException {
        put("abc");

        assertThat(names(Instant.now().minusSeconds(3600))).isEmpty();
        assertThat(names(Instant.now().plusSeconds(3600))).containsExactly(ABC);
    }

    @Test
    void refusesANameThatIsNoHash() {
        assertThatThrownBy(() -> store.open("../../etc/passwd")).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void isThereWhenAsked() throws IOException {
        store.check();
    }

    private ScanStore.Kept put(String text) throws IOException {
        return store.put(new ByteArrayInputStream(text.getBytes(StandardCharsets.US_ASCII)));
    }

    private List<String> names(Instant before) throws IOException {
        List<String> names = new ArrayList<>();
        store.forEachPutBefore(before, names::add);
        return names;
    }
}
