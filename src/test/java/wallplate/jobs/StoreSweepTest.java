package wallplate.jobs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.bean.override.mockito.MockitoBean;
import wallplate.records.ClassListEntry;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.ScanFiles;
import wallplate.records.ScanStore;
import wallplate.records.StoredNames;
import wallplate.records.Tasks;
import wallplate.web.DrawnSheets;

/** What no record refers to goes, and nothing else does. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.NONE,
        properties = {
            "spring.datasource.url=jdbc:h2:mem:sweep;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/sweep",
            "wallplate.demonstration.enabled=false"
        })
class StoreSweepTest {

    @MockitoBean
    private Start.ReadingStart start;

    @Autowired
    private ScanStore store;

    @Autowired
    private StoredNames names;

    @Autowired
    private ScanFiles files;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private Tasks tasks;

    @Autowired
    private JdbcClient database;

    @Test
    void clearsOutWhatIsOldAndHasNoRecord() throws IOException {
        ClassSet classSet = classSets.add(
                "Set", "11B", List.of(new ClassListEntry("Ada", "")), tasks.add(DrawnSheets.aTask()), false);
        String kept = put("a scan with a record");
        files.add(classSet.id(), "a.png", kept, 20).orElseThrow();
        String left = put("a scan whose record was never written");

        assertThat(sweepIn(Duration.ofHours(23)).sweep()).isZero();
        assertThat(sweepIn(Duration.ofHours(25)).sweep()).isEqualTo(1);

        store.open(kept).close();
        assertThatThrownBy(() -> store.open(left)).isInstanceOf(NoSuchFileException.class);
    }

    /** A column that is forgotten would lose pictures: names in the store are columns of 64 letters that are no other hash. */
    @Test
    void knowsEveryColumnThatHoldsNamesInTheStore() {
        List<String> columns = database.sql(
                        """
                        select table_name || '.' || column_name from information_schema.columns
                        where lower(table_schema) = 'public' and character_maximum_length = 64
                          and column_name not like '%code_hash' and column_name not like '%token_hash'""")
                .query(String.class)
                .list();
        List<String> asked = new ArrayList<>();
        names.columns().forEach(asked::add);

        assertThat(asked).containsAll(columns.stream().filter(StoreSweepTest::mayNameContent).toList());
        assertThat(columns).containsAll(asked);
    }

    private static boolean mayNameContent(String column) {
        return column.endsWith("_picture") || column.endsWith("content_hash");
    }

    private StoreSweep sweepIn(Duration time) {
        return new StoreSweep(store, names, Clock.offset(Clock.systemUTC(), time));
    }

    private String put(String text) throws IOException {
        return store.put(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8))).name();
    }
}
