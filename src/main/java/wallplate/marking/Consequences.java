package wallplate.marking;

import java.util.List;
import java.util.Optional;
import wallplate.solver.Expected;

/** What would be right for a key after what a learner drew earlier. */
interface Consequences {

    /**
     * One value that follows from others.
     *
     * @param expected what is right for them as they were drawn
     * @param causes the keys, drawn wrongly, that it follows from
     */
    record Consequence(Expected expected, List<String> causes) {
        public Consequence {
            causes = List.copyOf(causes);
        }
    }

    /** Empty where the key follows from nothing that was drawn wrongly. */
    Optional<Consequence> of(String key);
}
