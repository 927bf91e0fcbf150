/** Scans taken out of PDF files with PDFBox: the embedded picture where the page is one picture, else a rendering. */
@NullMarked
package wallplate.sheet.pdf;

import org.jspecify.annotations.NullMarked;
