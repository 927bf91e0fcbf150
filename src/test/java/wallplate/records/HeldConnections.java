package wallplate.records;

import java.lang.StackWalker.StackFrame;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.jdbc.datasource.DelegatingDataSource;

/**
 * Notices who takes a second connection to the database while holding one; imported by tests that walk many pages.
 *
 * <p>It works as long as few do it at once. Where as many do it as the pool has connections, each waits for another's until the
 * pool gives up, half a minute later.
 */
@TestConfiguration(proxyBeanMethods = false)
public class HeldConnections implements BeanPostProcessor {

    /** Tries to sign in stay counted where the page around them is taken back, which no single connection can do. */
    private static final String TAKES_ANOTHER = "JdbcSignInWaits";

    private final Queue<String> seconds = new ConcurrentLinkedQueue<>();
    private final ThreadLocal<Integer> held = ThreadLocal.withInitial(() -> 0);

    /** Who took a second connection: the program's own methods on the way there, the innermost first. */
    public List<String> takenBesideAnother() {
        return List.copyOf(seconds);
    }

    @Override
    public Object postProcessAfterInitialization(Object bean, String name) {
        return bean instanceof DataSource source ? new Counting(source) : bean;
    }

    private final class Counting extends DelegatingDataSource {

        Counting(DataSource source) {
            super(source);
        }

        @Override
        public Connection getConnection() throws SQLException {
            if (held.get() > 0) {
                String where = StackWalker.getInstance().walk(frames -> frames.filter(
                                frame -> frame.getClassName().startsWith("wallplate.") && !frame.getClassName().contains("HeldConnections"))
                        .map(StackFrame::toString)
                        .collect(Collectors.joining(" < ")));
                // Migrating at the start takes two, before anybody else does, and nothing of the program is on the way there.
                if (!where.isEmpty() && !where.contains(TAKES_ANOTHER)) {
                    seconds.add(where);
                }
            }
            Connection connection = super.getConnection();
            held.set(held.get() + 1);
            return watched(connection);
        }

        private Connection watched(Connection connection) {
            boolean[] closed = new boolean[1];
            return (Connection) Proxy.newProxyInstance(
                    getClass().getClassLoader(), new Class<?>[] {Connection.class}, (proxy, method, arguments) -> {
                        if (method.getName().equals("close") && !closed[0]) {
                            closed[0] = true;
                            held.set(held.get() - 1);
                        }
                        try {
                            return method.invoke(connection, arguments);
                        } catch (InvocationTargetException broken) {
                            throw broken.getCause();
                        }
                    });
        }
    }
}
