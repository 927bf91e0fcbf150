@NullMarked
package wallplate.stroke;

import org.jspecify.annotations.NullMarked;
