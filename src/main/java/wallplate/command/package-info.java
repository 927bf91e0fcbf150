/**
 * The command line.
 */
@NullMarked
@ApplicationModule(
        allowedDependencies = {
            "geometry",
            "task",
            "solver",
            "drafting",
            "sheet",
            "measure",
            "marking",
            "assessment",
            "report"
        })
package wallplate.command;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
