@NullMarked
package wallplate.measure;

import org.jspecify.annotations.NullMarked;
