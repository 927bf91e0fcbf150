package wallplate.jobs;

import com.github.kagkarlsson.scheduler.SchedulerName;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.UUID;
import org.springframework.stereotype.Component;

/** What this process calls itself in the queue: no other process, and no later one on this machine, has the same name. */
@Component
class ProcessName implements SchedulerName {

    private static final int LONGEST_HOST = 100;

    private final String name = host() + "-" + ProcessHandle.current().pid() + "-" + UUID.randomUUID();

    @Override
    public String getName() {
        return name;
    }

    private static String host() {
        try {
            String host = InetAddress.getLocalHost().getHostName();
            return host.substring(0, Math.min(host.length(), LONGEST_HOST));
        } catch (UnknownHostException nameless) {
            return "host";
        }
    }
}
