package wallplate.records.storage;

import java.time.Clock;
import java.time.Duration;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import software.amazon.awssdk.auth.credentials.AwsBasicCredentials;
import software.amazon.awssdk.auth.credentials.StaticCredentialsProvider;
import software.amazon.awssdk.core.checksums.RequestChecksumCalculation;
import software.amazon.awssdk.core.checksums.ResponseChecksumValidation;
import software.amazon.awssdk.http.urlconnection.UrlConnectionHttpClient;
import software.amazon.awssdk.regions.Region;
import software.amazon.awssdk.services.s3.S3Client;
import software.amazon.awssdk.services.s3.S3ClientBuilder;

/** Chooses the shelf that scans are laid on. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(StorageSettings.class)
class StorageConfiguration {

    private static final Duration LONGEST_CONNECTING = Duration.ofSeconds(5);
    private static final Duration LONGEST_SILENCE = Duration.ofSeconds(30);

    @Bean
    ScanShelf scanShelf(StorageSettings settings, Clock clock) {
        ScanShelf shelf = settings.store().equals("s3")
                ? new S3Shelf(client(settings.s3()), settings.s3().bucket())
                : new FolderShelf(settings.scans(), clock);
        return settings.keyFile()
                .map(ScanKey::of)
                .<ScanShelf>map(key -> new EncryptedShelf(shelf, key))
                .orElse(shelf);
    }

    private static S3Client client(StorageSettings.S3 settings) {
        S3ClientBuilder builder = S3Client.builder()
                .region(Region.of(settings.region()))
                .forcePathStyle(settings.pathStyle())
                // Only where the protocol asks for it: not every compatible store knows the newer checksums.
                .requestChecksumCalculation(RequestChecksumCalculation.WHEN_REQUIRED)
                .responseChecksumValidation(ResponseChecksumValidation.WHEN_REQUIRED)
                .httpClientBuilder(UrlConnectionHttpClient.builder()
                        .connectionTimeout(LONGEST_CONNECTING)
                        .socketTimeout(LONGEST_SILENCE));
        settings.address().ifPresent(builder::endpointOverride);
        if (settings.accessKey() != null && settings.secretKey() != null) {
            builder.credentialsProvider(StaticCredentialsProvider.create(
                    AwsBasicCredentials.create(settings.accessKey(), settings.secretKey())));
        }
        return builder.build();
    }
}
