package wallplate.command;

import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;
import wallplate.assessment.AssessedSheet;

/**
 * Passes on the pages of scan files with the knowledge whether their file has several.
 *
 * <p>That is only known when the second page comes, so the first one waits for it.
 */
final class PageOrder {

    private final BiConsumer<AssessedSheet, Boolean> next;
    private @Nullable AssessedSheet waiting;
    private int pages;

    PageOrder(BiConsumer<AssessedSheet, Boolean> next) {
        this.next = next;
    }

    void add(AssessedSheet sheet) {
        AssessedSheet first = waiting;
        if (first != null) {
            waiting = null;
            next.accept(first, first.scan().equals(sheet.scan()));
        }
        pages = sheet.page();
        if (sheet.page() == 1) {
            waiting = sheet;
        } else {
            next.accept(sheet, true);
        }
    }

    /** The number of the page that would come next. */
    int nextPage() {
        return pages + 1;
    }

    /** No page comes any more. */
    void end() {
        AssessedSheet only = waiting;
        if (only != null) {
            waiting = null;
            next.accept(only, false);
        }
    }
}
