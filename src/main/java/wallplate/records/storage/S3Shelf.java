package wallplate.records.storage;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.function.Consumer;
import java.util.function.Supplier;
import software.amazon.awssdk.core.exception.SdkException;
import software.amazon.awssdk.core.sync.RequestBody;
import software.amazon.awssdk.services.s3.S3Client;
import software.amazon.awssdk.services.s3.model.NoSuchKeyException;
import software.amazon.awssdk.services.s3.model.S3Object;

/** A bucket of an S3-compatible store as shelf; each content is one object, its name the key. */
final class S3Shelf implements ScanShelf, AutoCloseable {

    private final S3Client client;
    private final String bucket;

    S3Shelf(S3Client client, String bucket) {
        this.client = client;
        this.bucket = bucket;
    }

    @Override
    public void lay(String name, Path content) throws IOException {
        asked(() -> client.putObject(request -> request.bucket(bucket).key(name), RequestBody.fromFile(content)));
    }

    @Override
    public InputStream open(String name) throws IOException {
        try {
            return asked(() -> client.getObject(request -> request.bucket(bucket).key(name)));
        } catch (IOException broken) {
            if (broken.getCause() instanceof NoSuchKeyException) {
                throw new NoSuchFileException(name);
            }
            throw broken;
        }
    }

    @Override
    public void delete(String name) throws IOException {
        asked(() -> client.deleteObject(request -> request.bucket(bucket).key(name)));
    }

    @Override
    public void forEachLaidBefore(Instant moment, Consumer<String> visitor) throws IOException {
        try {
            client.listObjectsV2Paginator(request -> request.bucket(bucket)).contents().stream()
                    .filter(object -> object.lastModified().isBefore(moment))
                    .map(S3Object::key)
                    .forEach(visitor);
        } catch (SdkException broken) {
            throw unreachable(broken);
        }
    }

    @Override
    public void check() throws IOException {
        asked(() -> client.headBucket(request -> request.bucket(bucket)));
    }

    @Override
    public void close() {
        client.close();
    }

    private <T> T asked(Supplier<T> request) throws IOException {
        try {
            return request.get();
        } catch (SdkException broken) {
            throw unreachable(broken);
        }
    }

    private IOException unreachable(SdkException broken) {
        return new IOException("the bucket " + bucket + " of the scan store did not do what was asked", broken);
    }
}
