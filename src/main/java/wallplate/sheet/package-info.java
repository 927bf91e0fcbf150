/**
 * A scanned or photographed sheet becomes a level page in true millimetres, or is refused with a reason.
 *
 * <p>The way is: file, page, upright and rectified picture, calibration from the drawn bar, ink. The page map made here
 * is the only pixel-to-millimetre map of the program. Of the task only the sheet's size and the bar's length are known.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"geometry", "task"})
package wallplate.sheet;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
