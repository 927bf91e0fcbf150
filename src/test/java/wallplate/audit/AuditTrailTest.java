package wallplate.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.sql.DataSource;
import org.hamcrest.Matchers;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

/** What is written to the trail, and that tampering shows. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:audit;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/audit",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
class AuditTrailTest {

    @Autowired
    private AuditTrail trail;

    @Autowired
    private JdbcClient database;

    @Autowired
    private DataSource source;

    @Autowired
    private MockMvc pages;

    @BeforeEach
    void fourEntries() {
        database.sql("delete from audit_entries").update();
        database.sql("delete from audit_head where id = 2").update();
        database.sql("update audit_head set number = 0, hash = ?").param(AuditEntry.BEFORE_THE_FIRST).update();
        IntStream.rangeClosed(1, 4).forEach(number -> trail.append("teacher", "POST /sheets/{id}", "/sheets/" + number));
    }

    @Test
    void holdsWhereNobodyTouchedIt() throws SQLException {
        String second = trail.page(3, "", 1).get(0).hash();

        assertThat(check(Optional.empty())).isEqualTo(new AuditCheck.Sound(4, trail.page(5, "", 1).get(0).hash(), 1));
        assertThat(check(Optional.of(second))).isInstanceOf(AuditCheck.Sound.class);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "update audit_entries set person = 'another' where number = 2 | 2 | changed",
                "update audit_entries set done_at = timestamp with time zone '2020-01-01 00:00:00+00' where number = 3 | 3 | changed",
                "delete from audit_entries where number = 2 | 2 | missing",
                "delete from audit_entries where number = 1 | 1 | missing",
                "update audit_entries set number = case number when 2 then 13 else 12 end where number in (2, 3) | 2 | missing",
                "delete from audit_entries where number = 4 | 4 | cut off"
            })
    void showsWhereItWasTamperedWith(String tampering, long number, String because) throws SQLException {
        database.sql(tampering).update();

        assertThat(check(Optional.empty())).isInstanceOfSatisfying(AuditCheck.Broken.class, broken -> {
            assertThat(broken.number()).isEqualTo(number);
            assertThat(broken.because()).contains(because);
        });
    }

    @Test
    void showsTwoEntriesThatChangedPlaces() throws SQLException {
        database.sql("update audit_entries set number = 99 where number = 2").update();
        database.sql("update audit_entries set number = 2 where number = 3").update();
        database.sql("update audit_entries set number = 3 where number = 99").update();

        assertThat(check(Optional.empty())).isInstanceOf(AuditCheck.Broken.class);
    }

    /** The limit of a chain without a secret: an end cut off together with the head shows only by a hash noted elsewhere. */
    @Test
    void showsAnEndCutOffWithItsHeadOnlyByAHashThatWasNoted() throws SQLException {
        String noted = trail.page(5, "", 1).get(0).hash();
        database.sql("delete from audit_entries where number = 4").update();
        database.sql("update audit_head set number = 3, hash = (select hash from audit_entries where number = 3)").update();

        assertThat(check(Optional.empty())).isInstanceOf(AuditCheck.Sound.class);
        assertThat(check(Optional.of(noted))).isInstanceOf(AuditCheck.Broken.class);
    }

    @Test
    void givesPagesAndFindsWhatIsSought() {
        assertThat(numbers(trail.page(Long.MAX_VALUE, "", 2))).containsExactly(4L, 3L);
        assertThat(numbers(trail.page(3, "", 2))).containsExactly(2L, 1L);
        assertThat(numbers(trail.page(Long.MAX_VALUE, "SHEETS/3", 10))).containsExactly(3L);
        assertThat(trail.page(Long.MAX_VALUE, "%", 10)).isEmpty();
    }

    @Test
    void keepsOneChainWhereManyWriteAtOnce() throws SQLException {
        IntStream.range(0, 40).parallel().forEach(number -> trail.append("teacher", "POST /sheets/{id}", "/sheets/" + number));

        assertThat(check(Optional.empty())).isInstanceOfSatisfying(
                AuditCheck.Sound.class, sound -> assertThat(sound.entries()).isEqualTo(44));
    }

    @Test
    void isWrittenByChangesAndNotByWhatWasRefusedOrOnlyRead() throws Exception {
        pages.perform(get("/tasks")).andExpect(status().isOk());
        pages.perform(post("/check").param("code", "zzz")).andExpect(status().isUnprocessableContent());
        pages.perform(post("/class-sets/999/release")).andExpect(status().isNotFound());
        assertThat(trail.page(Long.MAX_VALUE, "", 10)).hasSize(4);

        pages.perform(post("/tasks/import").param("text", java.nio.file.Files.readString(java.nio.file.Path.of("sample-scans/task.yml"))))
                .andExpect(status().is3xxRedirection());
        assertThat(trail.page(Long.MAX_VALUE, "", 1).get(0).act()).isEqualTo("POST /tasks/import");
        pages.perform(get("/audit"))
                .andExpect(status().isOk())
                .andExpect(content().string(Matchers.containsString("changed /tasks/import")));
    }

    private AuditCheck check(Optional<String> known) throws SQLException {
        try (var connection = source.getConnection()) {
            return AuditCheck.of(connection, known);
        }
    }

    private static List<Long> numbers(List<AuditEntry> entries) {
        return entries.stream().map(AuditEntry::number).toList();
    }
}
