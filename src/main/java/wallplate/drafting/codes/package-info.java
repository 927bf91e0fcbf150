/**
 * Codes and marks that a printed sheet is known by, as filled areas: QR codes by ZXing, ArUco corner marks by their
 * published patterns.
 */
@NullMarked
package wallplate.drafting.codes;

import org.jspecify.annotations.NullMarked;
