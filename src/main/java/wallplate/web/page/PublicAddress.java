package wallplate.web.page;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** Under which address people reach this program, as its settings say. */
@Component
public class PublicAddress {

    private final String root;

    PublicAddress(@Value("${wallplate.address}") String setting) {
        this.root = setting.strip().replaceAll("/+$", "");
    }

    /** Such as {@code https://drawing.example.org}, without a slash at its end; empty where no setting says it. */
    public String root() {
        return root;
    }
}
