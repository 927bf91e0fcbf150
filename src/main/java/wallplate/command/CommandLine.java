package wallplate.command;

import java.io.PrintWriter;
import java.nio.charset.Charset;

/** The command line of the program: {@code mark}, {@code backup}, {@code restore} and {@code verify-audit}. */
public final class CommandLine {

    private static final String SETTING = "--";

    private CommandLine() {}

    /**
     * Whether the arguments are for a command rather than for the web application, whose settings all begin with two
     * dashes: a word that is no command is refused, and does not start a server.
     */
    public static boolean understands(String... arguments) {
        if (arguments.length == 0 || arguments[0].isBlank()) {
            return false;
        }
        return arguments[0].equals(WallplateCommand.HELP) || !arguments[0].startsWith(SETTING);
    }

    /** Runs the command and returns the exit status: 0 all done, 3 some sheets could not be read, 2 bad arguments or task, or nothing was done. */
    public static int run(String... arguments) {
        keepQuiet();
        return run(new PrintWriter(System.err, true, Charset.defaultCharset()), arguments);
    }

    static int run(PrintWriter errors, String... arguments) {
        picocli.CommandLine commands = new picocli.CommandLine(new WallplateCommand());
        commands.addSubcommand(new MarkCommand(errors));
        commands.addSubcommand(new BackupCommand(errors));
        commands.addSubcommand(new RestoreCommand(errors));
        commands.addSubcommand(new VerifyAuditCommand(errors));
        commands.setErr(errors);
        return commands.execute(arguments);
    }

    /**
     * Standard error belongs to the progress lines: the libraries' own log is switched off before any of them starts,
     * and no window system is asked for.
     */
    private static void keepQuiet() {
        System.setProperty("logback.configurationFile", "wallplate/command/no-log.xml");
        // Else the framework's own set-up of the log would come after it, where a command opens an installation.
        System.setProperty("org.springframework.boot.logging.LoggingSystem", "none");
        System.setProperty("java.awt.headless", "true");
    }
}
