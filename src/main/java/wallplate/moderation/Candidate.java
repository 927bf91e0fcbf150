package wallplate.moderation;

/** A sheet that may be drawn: read, and every criterion decided. */
public record Candidate(long sheetId, double total) {}
