package wallplate.records.storage;

import java.net.URI;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Where scans and pictures are kept.
 *
 * @param store {@code folder} or {@code s3}
 * @param scans the folder
 * @param scansKeyFile a file with the key by which everything is encrypted; without one it lies as it came
 */
@ConfigurationProperties("wallplate")
record StorageSettings(
        @DefaultValue("folder") String store, Path scans, @Nullable Path scansKeyFile, @DefaultValue S3 s3) {

    StorageSettings {
        store = store.toLowerCase(Locale.ROOT);
        if (!store.equals("folder") && !store.equals("s3")) {
            throw new IllegalArgumentException("wallplate.store is folder or s3, not " + store);
        }
        if (store.equals("s3") && s3.bucket().isBlank()) {
            throw new IllegalArgumentException("wallplate.store is s3, so wallplate.s3.bucket must name a bucket");
        }
    }

    Optional<Path> keyFile() {
        return Optional.ofNullable(scansKeyFile);
    }

    /**
     * An S3-compatible store.
     *
     * @param endpoint its address; without one, Amazon's own for the region
     * @param accessKey with the secret key; without them, where the AWS SDK looks by itself (environment, role)
     * @param pathStyle whether the bucket is named in the path, as most other stores than Amazon's want it
     */
    record S3(
            @DefaultValue("") String bucket,
            @Nullable URI endpoint,
            @DefaultValue("us-east-1") String region,
            @Nullable String accessKey,
            @Nullable String secretKey,
            @DefaultValue("true") boolean pathStyle) {

        Optional<URI> address() {
            return Optional.ofNullable(endpoint);
        }
    }
}
