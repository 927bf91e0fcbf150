package wallplate.records.storage;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.time.Clock;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Against a real S3 server. */
class S3ShelfTest extends ScanShelfTest {

    private S3Server server;

    @Override
    ScanShelf shelf() throws Exception {
        server = new S3Server(folder.resolve("objects"));
        return new StorageConfiguration().scanShelf(settings(S3Server.BUCKET), Clock.systemUTC());
    }

    private StorageSettings settings(String bucket) {
        return new StorageSettings(
                "s3",
                folder,
                null,
                new StorageSettings.S3(
                        bucket, server.address(), "us-east-1", S3Server.ACCESS_KEY, S3Server.SECRET_KEY, true));
    }

    @AfterEach
    void stop() throws Exception {
        server.close();
    }

    @Test
    void saysThatABucketIsNotThere() {
        ScanShelf elsewhere = new StorageConfiguration().scanShelf(settings("another"), Clock.systemUTC());

        assertThatThrownBy(elsewhere::check).isInstanceOf(IOException.class).hasMessageContaining("another");
    }

    @Test
    void saysThatTheServerIsGone() throws Exception {
        ScanShelf shelf = new StorageConfiguration().scanShelf(settings(S3Server.BUCKET), Clock.systemUTC());
        server.stop();

        assertThatThrownBy(shelf::check).isInstanceOf(IOException.class);
        server.startAgain();
        shelf.check();
    }

    @Test
    void needsABucketInItsSettings() {
        assertThatThrownBy(() -> settings(" "))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("wallplate.s3.bucket");
    }
}
