package wallplate.web.page;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import wallplate.tables.Table;
import wallplate.tables.TableFile;

/** Files that a page hands out to be kept. */
public final class TableDownload {

    private static final MediaType CSV = new MediaType("text", "csv", StandardCharsets.UTF_8);
    private static final MediaType XLSX =
            MediaType.parseMediaType("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet");

    private TableDownload() {}

    /** @param name of the file without its ending */
    public static ResponseEntity<byte[]> csv(Table table, String name) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        TableFile.writeCsv(table, out);
        return of(CSV, name + ".csv", out.toByteArray());
    }

    /** @param name of the file without its ending */
    public static ResponseEntity<byte[]> xlsx(Table table, String name) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        TableFile.writeXlsx(table, out);
        return of(XLSX, name + ".xlsx", out.toByteArray());
    }

    /** Any file under a name that every file system takes. */
    public static ResponseEntity<byte[]> of(MediaType type, String name, byte[] content) {
        String plain = name.replaceAll("[^\\p{L}\\p{N} ._-]", "-").replaceAll("^\\.+", "-");
        ContentDisposition disposition = ContentDisposition.attachment()
                .filename(plain, StandardCharsets.UTF_8)
                .build();
        return ResponseEntity.ok()
                .header(HttpHeaders.CONTENT_DISPOSITION, disposition.toString())
                .contentType(type)
                .body(content);
    }
}
