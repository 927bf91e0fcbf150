/** Scans and pictures in a folder of the file system. */
@NullMarked
package wallplate.records.storage;

import org.jspecify.annotations.NullMarked;
