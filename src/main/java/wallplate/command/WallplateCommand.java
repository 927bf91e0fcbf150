package wallplate.command;

import picocli.CommandLine.Command;

/** What stands before the commands. */
@Command(
        name = "wallplate.jar",
        description = "Assesses scanned, hand-drawn building drawings.",
        synopsisSubcommandLabel = "COMMAND")
final class WallplateCommand {

    /** Who acts in the audit trail where a command did. */
    static final String PERSON = "the command line";
}
