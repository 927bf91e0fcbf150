package wallplate.command;

import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.util.Set;

/** The command line of the program: {@code mark}, {@code backup}, {@code restore} and {@code verify-audit}. */
public final class CommandLine {

    private static final Set<String> COMMANDS = Set.of("mark", "backup", "restore", "verify-audit");

    private CommandLine() {}

    /** Whether the arguments ask for a command rather than for the web application. */
    public static boolean understands(String... arguments) {
        return arguments.length > 0 && COMMANDS.contains(arguments[0]);
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
