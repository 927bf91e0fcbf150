package wallplate.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is a command and what a setting of the web application. */
class CommandLineTest {

    @ParameterizedTest
    @ValueSource(strings = {"mark", "verify-audit", "--help", "-h", "verify-trail"})
    void takesAWordForACommand(String argument) {
        assertThat(CommandLine.understands(argument)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"--server.port=8081", "--debug", ""})
    void takesASettingForTheWebApplication(String argument) {
        assertThat(CommandLine.understands(argument)).isFalse();
        assertThat(CommandLine.understands()).isFalse();
    }

    @Test
    void refusesAWordThatIsNoCommandAndNamesThoseThatAre() {
        StringWriter said = new StringWriter();

        assertThat(CommandLine.run(new PrintWriter(said, true), "verify-trail")).isEqualTo(2);

        assertThat(said.toString()).contains("verify-trail").contains("verify-audit");
    }
}
