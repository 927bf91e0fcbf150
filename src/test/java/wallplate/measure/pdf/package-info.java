@NullMarked
package wallplate.measure.pdf;

import org.jspecify.annotations.NullMarked;
