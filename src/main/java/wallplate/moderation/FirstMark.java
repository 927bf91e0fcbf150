package wallplate.moderation;

/**
 * A mark as it stood when the sample was drawn.
 *
 * @param position the criterion's place in the guideline, from 1
 */
public record FirstMark(String criterion, int position, String title, double available, double awarded) {}
