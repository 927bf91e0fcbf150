package wallplate.records.storage;

import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Properties;
import org.gaul.s3proxy.AuthenticationType;
import org.gaul.s3proxy.S3Proxy;
import org.jclouds.ContextBuilder;
import org.jclouds.blobstore.BlobStoreContext;

/** A real S3 server on this machine, which keeps its objects in a folder; it can be stopped and started again. */
public final class S3Server implements AutoCloseable {

    public static final String ACCESS_KEY = "for-tests";
    public static final String SECRET_KEY = "for-tests-only";
    public static final String BUCKET = "scans";

    private final BlobStoreContext context;
    private final URI address;
    private S3Proxy server;

    public S3Server(Path folder) throws Exception {
        Files.createDirectories(folder);
        Properties settings = new Properties();
        settings.setProperty("jclouds.filesystem.basedir", folder.toString());
        this.context = ContextBuilder.newBuilder("filesystem-nio2")
                .credentials(ACCESS_KEY, SECRET_KEY)
                .overrides(settings)
                .build(BlobStoreContext.class);
        context.getBlobStore().createContainerInLocation(null, BUCKET);
        try (ServerSocket free = new ServerSocket(0)) {
            this.address = URI.create("http://127.0.0.1:" + free.getLocalPort());
        }
        this.server = started();
    }

    private S3Proxy started() throws Exception {
        S3Proxy proxy = S3Proxy.builder()
                .blobStore(context.getBlobStore())
                .awsAuthentication(AuthenticationType.AWS_V2_OR_V4, ACCESS_KEY, SECRET_KEY)
                .endpoint(address)
                .ignoreUnknownHeaders(true)
                .build();
        proxy.start();
        return proxy;
    }

    public URI address() {
        return address;
    }

    public void stop() throws Exception {
        server.stop();
    }

    public void startAgain() throws Exception {
        server = started();
    }

    /** The settings with which the application uses this server. */
    public Map<String, String> settings() {
        return Map.of(
                "wallplate.store", "s3",
                "wallplate.s3.endpoint", address.toString(),
                "wallplate.s3.bucket", BUCKET,
                "wallplate.s3.access-key", ACCESS_KEY,
                "wallplate.s3.secret-key", SECRET_KEY);
    }

    @Override
    public void close() throws Exception {
        server.stop();
        context.close();
    }
}
