package wallplate.command;

import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What stands before the commands. */
@Command(
        name = "wallplate.jar",
        description = "Assesses scanned, hand-drawn building drawings.",
        synopsisSubcommandLabel = "COMMAND",
        footer = "Without a command the web application starts; settings such as --server.port=8081 may follow.")
final class WallplateCommand {

    static final String HELP = "--help";

    /** Who acts in the audit trail where a command did. */
    static final String PERSON = "the command line";

    @Option(names = HELP, usageHelp = true, description = "Says what the commands are.")
    private boolean isHelp;
}
