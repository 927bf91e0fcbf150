package wallplate.web.accounts;

import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import wallplate.web.page.PublicAddress;

/** The whole address of a one-time link, to be handed to somebody. */
@Component
class LinkAddress {

    private final PublicAddress address;
    private final Environment environment;

    LinkAddress(PublicAddress address, Environment environment) {
        this.address = address;
        this.environment = environment;
    }

    /** Never from what a request says about its host: whoever sends it could name another one. */
    String of(String token) {
        return ofTheProgram() + "/set-password/" + token;
    }

    /** Where the program itself is open. */
    String ofTheProgram() {
        String port = environment.getProperty("local.server.port", environment.getProperty("server.port", "8080"));
        return address.root().isEmpty() ? "http://localhost:" + port : address.root();
    }
}
