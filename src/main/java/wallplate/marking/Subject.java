package wallplate.marking;

import java.util.List;

/** What a criterion looks at. */
public sealed interface Subject {

    /** One measured key: a length, an angle, a count, a yes or no, or a word. */
    record OneKey(String key) implements Subject {}

    /** Several keys, each with the tolerance that is usual for it; full marks where all are right. */
    record SeveralKeys(List<String> keys) implements Subject {
        public SeveralKeys {
            keys = List.copyOf(keys);
        }
    }

    /** Whether a part is drawn at all, right or wrong: a part such as {@code gutter}. */
    record PartDrawn(String part) implements Subject {}

    /**
     * How the lines themselves are drawn, whatever they are lines of.
     *
     * @param accepted what earns full marks, in the aspect's own unit
     */
    record Lines(LineAspect aspect, LineRange accepted) implements Subject {}

    /**
     * What only a person judges.
     *
     * @param note what to look for
     */
    record TeachersJudgement(String note) implements Subject {}
}
