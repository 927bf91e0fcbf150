/** Sheets wrapped into PDF documents, as office scanners hand them over. */
@NullMarked
package wallplate.samples.pdf;

import org.jspecify.annotations.NullMarked;
