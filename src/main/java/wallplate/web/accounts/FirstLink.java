package wallplate.web.accounts;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.autoconfigure.condition.ConditionalOnWebApplication;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import wallplate.accounts.Accounts;
import wallplate.accounts.OneTimeLinks;
import wallplate.accounts.Role;

/**
 * Says in the log at each start where the program is open, and prints a link for as long as nobody looks after the accounts:
 * whoever can read the log makes the first administrator. Where several servers start at once, the link printed last is the one that opens.
 */
@Component
@ConditionalOnWebApplication
class FirstLink {

    private static final Logger LOG = LoggerFactory.getLogger(FirstLink.class);

    private final Accounts accounts;
    private final OneTimeLinks links;
    private final LinkAddress address;
    private final wallplate.jobs.Role role;

    FirstLink(Accounts accounts, OneTimeLinks links, LinkAddress address, wallplate.jobs.Role role) {
        this.accounts = accounts;
        this.links = links;
        this.address = address;
        this.role = role;
    }

    @EventListener(ApplicationReadyEvent.class)
    void print() {
        if (!role.showsPages()) {
            return;
        }
        if (accounts.with(Role.ADMINISTRATOR).isEmpty()) {
            LOG.warn(
                    "nobody looks after the accounts yet. To make the administrator, open this within {} hours, once: {}",
                    OneTimeLinks.LASTS.toHours(),
                    address.of(links.makeForFirstAdministrator()));
        }
        LOG.info("open in a browser: {}", address.ofTheProgram());
    }
}
