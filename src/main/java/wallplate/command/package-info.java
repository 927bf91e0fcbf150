/**
 * The command line.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"audit", "task", "solver", "sheet", "marking", "assessment", "report", "backup"})
package wallplate.command;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
