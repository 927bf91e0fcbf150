package wallplate;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import wallplate.command.CommandLine;

/**
 * Where the program starts: as the web application, or as a command, which never starts a web server; {@code mark} opens
 * no database either.
 */
@SpringBootApplication
public class Wallplate {

    public static void main(String[] arguments) {
        if (CommandLine.understands(arguments)) {
            System.exit(CommandLine.run(arguments));
        }
        SpringApplication.run(Wallplate.class, arguments);
    }
}
