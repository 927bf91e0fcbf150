package wallplate.records;

import java.util.List;
import java.util.Optional;

/** Where the reading of files and sheets stands, as the background work writes it down. */
public interface Readings {

    /** The file that a sheet is a page of. */
    Optional<ScanFileEntry> fileOf(long sheetId);

    /**
     * Says that the pages of a file are known and now being read; makes the sheets that are not there yet.
     *
     * @param pages the number of pages, at least 1
     * @return the sheets that are still to be read, in the order of the pages; none where the file is not to be read
     */
    List<Long> open(long fileId, int pages);

    /** Says that a file only held other files: it has no sheets of its own but those that were refused. */
    void unpacked(long fileId);

    /** How often the opening of a file has been begun without coming to an end. */
    int openings(long fileId);

    /** Says that the opening of a file was broken off in good order and not by a crash. */
    void handBackFile(long fileId);

    /** Says that a sheet waits again, because its reading was broken off in good order and not by a crash. */
    void handBack(long sheetId);

    /** Says that a file is done where every sheet of it is. */
    void finishWhereRead(long fileId);

    /**
     * Makes a sheet that was set aside wait again, and its file with it.
     *
     * @return the file, to be queued; empty where the sheet was not set aside
     */
    Optional<ScanFileEntry> tryAgain(long sheetId);

    /** The sheets of a set that were set aside. */
    List<Long> setAside(long classSetId);
}
