package wallplate.records.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EncryptedShelfTest {

    private static final int HEAD = 24;
    private static final int PIECE = 65_536 + 16;

    @TempDir
    private Path folder;

    private final ScanKey key = new ScanKey(bytes(32, 1));

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 65_535, 65_536, 65_537, 131_072, 300_000})
    void givesBackWhatWasLaidDownAndKeepsNothingReadable(int size) throws IOException {
        byte[] content = bytes(size, 2);
        String name = store(key).put(new ByteArrayInputStream(content)).name();

        assertThat(read(key, name)).isEqualTo(content);
        byte[] kept = Files.readAllBytes(place(name));
        assertThat(kept.length).isGreaterThan(size);
        if (size > 100) {
            assertThat(new String(kept, StandardCharsets.ISO_8859_1))
                    .doesNotContain(new String(Arrays.copyOf(content, 16), StandardCharsets.ISO_8859_1));
        }
    }

    @Test
    void givesWhatWasKeptBeforeThereWasAKey() throws IOException {
        byte[] content = bytes(1000, 3);
        String name = new HashedScanStore(plain()).put(new ByteArrayInputStream(content)).name();

        assertThat(read(key, name)).isEqualTo(content);
    }

    @Test
    void refusesWhatWasChangedCutOffOrPutInAnotherOrder() throws IOException {
        byte[] content = bytes(200_000, 4);
        String name = store(key).put(new ByteArrayInputStream(content)).name();
        byte[] kept = Files.readAllBytes(place(name));

        byte[] changed = kept.clone();
        changed[HEAD + 5] ^= 1;
        byte[] swapped = kept.clone();
        System.arraycopy(kept, HEAD, swapped, HEAD + PIECE, PIECE);
        System.arraycopy(kept, HEAD + PIECE, swapped, HEAD, PIECE);
        for (byte[] wrong : new byte[][] {changed, swapped, Arrays.copyOf(kept, HEAD + PIECE), Arrays.copyOf(kept, HEAD)}) {
            Files.write(place(name), wrong);
            assertThatThrownBy(() -> read(key, name)).isInstanceOf(IOException.class);
        }
        Files.write(place(name), kept);
        assertThatThrownBy(() -> read(new ScanKey(bytes(32, 9)), name)).isInstanceOf(IOException.class);
    }

    @Test
    void noticesOneContentUnderTheNameOfAnother() throws IOException {
        String one = store(key).put(new ByteArrayInputStream(bytes(10, 5))).name();
        String other = store(key).put(new ByteArrayInputStream(bytes(10, 6))).name();
        Files.write(place(one), Files.readAllBytes(place(other)));

        assertThatThrownBy(() -> read(key, one)).isInstanceOf(IOException.class);
    }

    @Test
    void saysWhatIsWrongWithAKeyFileAndNotWhatStandsInIt() throws IOException {
        Path file = folder.resolve("key");
        assertThatThrownBy(() -> ScanKey.of(file)).hasMessageContaining("cannot be read");
        Files.writeString(file, "secret");
        assertThatThrownBy(() -> ScanKey.of(file)).hasMessageContaining("64 hexadecimal digits").hasNoCause();
        Files.writeString(file, "0f".repeat(32) + "\n");
        assertThat(ScanKey.of(file)).isNotNull();
    }

    private HashedScanStore store(ScanKey with) {
        return new HashedScanStore(new EncryptedShelf(plain(), with));
    }

    private FolderShelf plain() {
        return new FolderShelf(folder.resolve("scans"), Clock.systemUTC());
    }

    private byte[] read(ScanKey with, String name) throws IOException {
        try (InputStream content = store(with).open(name)) {
            return content.readAllBytes();
        }
    }

    private Path place(String name) {
        return folder.resolve("scans").resolve(name.substring(0, 2)).resolve(name);
    }

    private static byte[] bytes(int size, long seed) {
        byte[] bytes = new byte[size];
        new Random(seed).nextBytes(bytes);
        return bytes;
    }
}
