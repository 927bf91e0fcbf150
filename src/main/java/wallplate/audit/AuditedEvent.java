package wallplate.audit;

/**
 * Something that happened and is to be written to the trail, with more than the address of a page says. It is told within the
 * transaction of the change; whoever listens knows who acts.
 *
 * @param act what happened: a word of {@code audit.event.…} in the texts of the pages, and figures behind it, parted by spaces
 * @param subject to what: an address with ids, no names
 */
public record AuditedEvent(String act, String subject) {}
