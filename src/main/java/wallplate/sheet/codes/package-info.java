/** The code printed on the project's own sheets, found and read with ZXing. */
@NullMarked
package wallplate.sheet.codes;

import org.jspecify.annotations.NullMarked;
