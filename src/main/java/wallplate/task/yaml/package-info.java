/**
 * YAML text to a small tree of plain entries, and back; the only place that knows the YAML library.
 *
 * <p>A task file comes from anywhere, so nothing in it is ever turned into an object of its own choosing: tags, anchors
 * and aliases are refused, size and depth are limited, and keys that stand twice are faults.
 */
@NullMarked
package wallplate.task.yaml;

import org.jspecify.annotations.NullMarked;
