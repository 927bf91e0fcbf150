package wallplate.web.accounts;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/** The whole address of a one-time link, to be handed to somebody. */
@Component
class LinkAddress {

    private final String setting;
    private final Environment environment;

    LinkAddress(@Value("${wallplate.address}") String setting, Environment environment) {
        this.setting = setting.strip();
        this.environment = environment;
    }

    /** Never from what a request says about its host: whoever sends it could name another one. */
    String of(String token) {
        String port = environment.getProperty("local.server.port", environment.getProperty("server.port", "8080"));
        String root = setting.isEmpty() ? "http://localhost:" + port : setting.replaceAll("/+$", "");
        return root + "/set-password/" + token;
    }
}
