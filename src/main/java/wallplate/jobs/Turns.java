package wallplate.jobs;

import java.util.Optional;

/** Priorities in the queue. The column holds 16 bits with a sign. */
final class Turns {

    /** A learner waits for it. */
    static final int SELF_CHECK = 32_000;

    /** A teacher waits for it. */
    static final int HANDOUT = 31_500;

    /** Tells how many sheets there are, so that progress shows the whole. */
    static final int OPEN_FILE = 31_000;

    /** The turn of the first sheet in an empty queue; later turns are lower. */
    static final int FIRST = 30_000;

    /** Where turns have come this low, the rest goes in the order of time. */
    static final int LAST = -32_000;

    private Turns() {}

    /**
     * The turn of a class's next sheet.
     *
     * @param now the turn that is being served
     * @param last the lowest turn among the class's waiting sheets
     */
    static int after(int now, Optional<Integer> last) {
        int turn = last.map(lowest -> Math.min(now, lowest - 1)).orElse(now);
        return Math.max(LAST, Math.min(FIRST, turn));
    }
}
