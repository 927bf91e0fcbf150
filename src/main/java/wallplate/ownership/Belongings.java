package wallplate.ownership;

import java.util.List;
import java.util.Optional;

/** Which record belongs to whom. */
public interface Belongings {

    /**
     * To whom a record belongs; empty where there is none.
     *
     * @param name its number, or a picture's name
     */
    Optional<Belonging> find(Kind kind, String name);

    /**
     * Whether first marks of a record are to be hidden from somebody, because a sample of the same set waits for second
     * marks of the same person.
     */
    boolean waitsForSecondMarks(Kind kind, String name, long account);

    /**
     * Gives a task, class, class set or mark sheet to an account. With a class go its sets and mark sheets that were of the
     * same owner, with a set that has a list of its own that list.
     */
    void give(Kind kind, long id, long account);

    /** Gives a sample to a second marker. */
    void giveSample(long moderationId, long account);

    /** How much each account has, and what is nobody's; without the demonstration. Whoever has nothing is not named. */
    List<Holding> holdings();

    /**
     * Gives everything of one account, or everything that is nobody's, to another.
     *
     * @return how many records went over
     */
    int handOver(Optional<Long> from, long to);

    /** @param account empty for what is nobody's */
    record Holding(Optional<Long> account, int classes, int classSets, int tasks, int markSheets) {

        public int all() {
            return classes + classSets + tasks + markSheets;
        }
    }
}
