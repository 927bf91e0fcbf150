/**
 * The details themselves, one class each: their parts, sizes, ranges and rules. Ranges are wide on purpose: they keep
 * out slips of the unit and sizes that no drawing could show, not unusual roofs.
 */
@NullMarked
package wallplate.task.detail;

import org.jspecify.annotations.NullMarked;
