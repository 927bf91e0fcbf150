package wallplate.records;

import java.util.List;

/**
 * How far the reading of a class set has come.
 *
 * @param needsPerson finished sheets that a person has to look at
 * @param checked finished sheets that a person has looked at
 */
public record Progress(
        int sheets, int waiting, int reading, int read, int unreadable, int failed, int needsPerson, int checked) {

    public static Progress of(List<SheetEntry> sheets) {
        return new Progress(
                sheets.size(),
                count(sheets, SheetState.WAITING),
                count(sheets, SheetState.READING),
                count(sheets, SheetState.READ),
                count(sheets, SheetState.UNREADABLE),
                count(sheets, SheetState.FAILED),
                (int) sheets.stream().filter(SheetEntry::needsPerson).count(),
                (int) sheets.stream().filter(sheet -> sheet.checkedAt().isPresent()).count());
    }

    private static int count(List<SheetEntry> sheets, SheetState state) {
        return (int) sheets.stream().filter(sheet -> sheet.state() == state).count();
    }

    public int finished() {
        return read + unreadable + failed;
    }

    public boolean isAtWork() {
        return waiting + reading > 0;
    }
}
