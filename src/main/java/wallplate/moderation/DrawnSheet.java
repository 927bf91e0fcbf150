package wallplate.moderation;

import java.util.List;

/** A sheet at the moment it was drawn, with its first marks. */
public record DrawnSheet(long sheetId, double total, double available, List<FirstMark> marks) {
    public DrawnSheet {
        marks = List.copyOf(marks);
    }
}
