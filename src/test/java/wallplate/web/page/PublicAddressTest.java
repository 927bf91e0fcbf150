package wallplate.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PublicAddressTest {

    @Test
    void endsWithoutASlashSoThatAPathCanFollow() {
        assertThat(new PublicAddress(" https://drawing.example.org/ ").root()).isEqualTo("https://drawing.example.org");
    }

    @Test
    void isEmptyWhereNoSettingSaysIt() {
        assertThat(new PublicAddress("").root()).isEmpty();
    }
}
