package wallplate.operations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Bean;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;
import wallplate.audit.AuditCheck;
import wallplate.audit.AuditTrail;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.ScanFiles;
import wallplate.records.ScanStore;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;
import wallplate.records.Tasks;

/**
 * The disk of the scans is full while a set is handed in and read: uploads are refused as a whole, what was taken in before waits, and when
 * there is room again every sheet is there once and the trail is unbroken.
 *
 * <p>The store fails as the operating system has it fail: with an {@link IOException} at writing, while reading goes on.
 */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:full;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/full",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
class DiskFullIT {

    private static final int SHEETS = 3;

    private static final AtomicBoolean IS_FULL = new AtomicBoolean();

    /** The workers and the daily tasks call the store from the start on, so that it is wrapped before any of them has it. */
    @TestConfiguration
    static class SmallDisk {

        @Bean
        static BeanPostProcessor wrappingTheStore() {
            return new BeanPostProcessor() {
                @Override
                public Object postProcessAfterInitialization(Object bean, String name) {
                    return bean instanceof ScanStore store ? onSmallDisk(store) : bean;
                }
            };
        }

        private static Object onSmallDisk(ScanStore store) {
            return Proxy.newProxyInstance(
                    ScanStore.class.getClassLoader(), new Class<?>[] {ScanStore.class}, (proxy, method, arguments) -> {
                        if (IS_FULL.get() && method.getName().equals("put")) {
                            throw new IOException("No space left on device");
                        }
                        try {
                            return method.invoke(store, arguments);
                        } catch (InvocationTargetException thrown) {
                            throw thrown.getCause();
                        }
                    });
        }
    }

    @Autowired
    private MockMvc pages;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private ScanFiles files;

    @Autowired
    private Sheets sheets;

    @Autowired
    private AuditTrail trail;

    @Autowired
    private DataSource source;

    @Test
    void losesNothingAndKeepsNothingTwice() throws Exception {
        SampleScans scans = SampleScans.read();
        ClassSet set = classSets.add("Full", "class", List.of(), tasks.add(SampleScans.task()), false);
        for (int sheet = 0; sheet < SHEETS; sheet++) {
            handIn(set, sheet, scans.scan(sheet)).andExpect(status().is3xxRedirection());
        }
        IS_FULL.set(true);

        handIn(set, 9, scans.scan(9)).andExpect(status().isInternalServerError());
        assertThat(files.of(set.id())).hasSize(SHEETS);
        Thread.sleep(6_000);
        assertThat(sheets.of(set.id())).extracting(SheetEntry::state).doesNotContain(SheetState.FAILED);
        IS_FULL.set(false);

        Instant latest = Instant.now().plus(Duration.ofSeconds(120));
        while (finished(set) < SHEETS && Instant.now().isBefore(latest)) {
            Thread.sleep(200);
        }
        assertThat(sheets.of(set.id())).hasSize(SHEETS);
        assertThat(sheets.of(set.id())).extracting(SheetEntry::state).containsOnly(SheetState.READ);
        handIn(set, 9, scans.scan(9)).andExpect(status().is3xxRedirection());
        assertThat(files.of(set.id())).hasSize(SHEETS + 1);
        assertThat(trail.page(Long.MAX_VALUE, "scan-taken", 50)).hasSize(SHEETS + 1);
        try (var connection = source.getConnection()) {
            assertThat(AuditCheck.of(connection, Optional.empty())).isInstanceOf(AuditCheck.Sound.class);
        } catch (SQLException broken) {
            throw new AssertionError(broken);
        }
    }

    private org.springframework.test.web.servlet.ResultActions handIn(ClassSet set, int number, byte[] scan) throws Exception {
        return pages.perform(multipart("/class-sets/" + set.id() + "/scans")
                .file(new MockMultipartFile("scans", "sheet-" + number + ".jpg", "image/jpeg", scan)));
    }

    private long finished(ClassSet set) {
        return sheets.of(set.id()).stream().filter(sheet -> sheet.state().isFinished()).count();
    }
}
