package wallplate.records;

import java.util.List;
import wallplate.ownership.Share;

/** Class sets with how far each has come, a page of them at a time. */
public interface Standings {

    /** Which class sets are wanted. */
    enum Which {
        ALL,
        /** With sheets that wait or are being read. */
        AT_WORK,
        /** With finished sheets that a person has to look at. */
        NEEDS_PERSON,
        /** Read, looked at where a person had to, and not released. */
        TO_RELEASE
    }

    /** A class set with how far it has come. */
    record Standing(ClassSet classSet, Progress progress) {}

    /**
     * A part of the sets that were asked for.
     *
     * @param found how many there are in all; 0 where the part begins behind the last of them
     */
    record Page(List<Standing> sets, int found) {
        public Page {
            sets = List.copyOf(sets);
        }
    }

    /**
     * The newest sets first.
     *
     * @param share of whom
     * @param containing what the title or the name of the class contains, in any case; empty for all
     * @param from how many to pass over
     */
    Page page(Share share, Which which, String containing, int from, int most);
}
