package wallplate.operations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import wallplate.Wallplate;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.ScanFiles;
import wallplate.records.ScanStore;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.web.DrawnSheets;

/** A server that ends in the middle of a set goes on with it when it is started again. */
class RestartTest {

    @TempDir
    private Path data;

    @Test
    void goesOnWithASetAfterTheServerWasStartedAgain() throws IOException {
        long classSetId;
        try (ConfigurableApplicationContext server = started()) {
            ClassSet classSet = server.getBean(ClassSets.class)
                    .add("Set", "11B", List.of(), server.getBean(Tasks.class).add(DrawnSheets.aTask()), false);
            classSetId = classSet.id();
            Sheets sheets = server.getBean(Sheets.class);
            sheets.refuse(handedIn(server, classSetId, 1), "read before the end", "{}");
            sheets.beginReading(handedIn(server, classSetId, 2));
            handedIn(server, classSetId, 3);
        }

        try (ConfigurableApplicationContext server = started()) {
            Sheets sheets = server.getBean(Sheets.class);
            await().atMost(Duration.ofSeconds(60))
                    .until(() -> sheets.of(classSetId).stream().allMatch(sheet -> sheet.state().isFinished()));

            assertThat(sheets.of(classSetId)).extracting(SheetEntry::state).containsOnly(SheetState.UNREADABLE).hasSize(3);
            assertThat(sheets.of(classSetId).get(0).reason()).contains("read before the end");
            assertThat(sheets.of(classSetId).get(1).reason().orElseThrow()).doesNotContain("before the end");
        }
    }

    private ConfigurableApplicationContext started() {
        return new SpringApplicationBuilder(Wallplate.class)
                .run(
                        "--server.port=0",
                        "--wallplate.demonstration.enabled=false",
                        "--wallplate.scans=" + data.resolve("scans"),
                        "--spring.datasource.url=jdbc:h2:file:" + data.resolve("wallplate")
                                + ";MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH");
    }

    /** A file of one sheet that was begun; the reading of its sheet was queued and is lost with the server. */
    private static long handedIn(ConfigurableApplicationContext server, long classSetId, int number) throws IOException {
        byte[] content = ("no scan " + number).getBytes(StandardCharsets.UTF_8);
        ScanStore.Kept kept = server.getBean(ScanStore.class).put(new ByteArrayInputStream(content));
        ScanFiles files = server.getBean(ScanFiles.class);
        long file = files.add(classSetId, number + ".png", kept.name(), kept.sizeBytes()).orElseThrow().id();
        long sheet = server.getBean(Sheets.class).page(file, 1).id();
        files.begin(file);
        return sheet;
    }
}
