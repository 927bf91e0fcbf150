package wallplate.command;

/** The command line of the program; {@code mark} is its one command so far. */
public final class CommandLine {

    private CommandLine() {}

    /** Whether the arguments ask for a command rather than for the web application. */
    public static boolean understands(String... arguments) {
        return arguments.length > 0 && arguments[0].equals("mark");
    }

    /** Runs the command and returns the exit status: 0 all read, 3 some could not be read, 2 bad arguments or task. */
    public static int run(String... arguments) {
        throw new UnsupportedOperationException("mark");
    }
}
