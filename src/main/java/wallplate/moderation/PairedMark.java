package wallplate.moderation;

/** The two marks that one criterion of one sheet got. */
public record PairedMark(
        int place, String criterion, int position, String title, double available, double first, double second) {}
