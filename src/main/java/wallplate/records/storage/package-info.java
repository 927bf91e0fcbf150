/**
 * Scans and pictures at rest. {@code HashedScanStore} names content, a {@code ScanShelf} is where it lies: a folder or an
 * S3-compatible store.
 */
@NullMarked
package wallplate.records.storage;

import org.jspecify.annotations.NullMarked;
