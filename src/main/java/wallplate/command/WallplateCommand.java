package wallplate.command;

import picocli.CommandLine.Command;

/** What stands before the commands. */
@Command(
        name = "wallplate.jar",
        description = "Assesses scanned, hand-drawn building drawings.",
        synopsisSubcommandLabel = "COMMAND")
final class WallplateCommand {}
