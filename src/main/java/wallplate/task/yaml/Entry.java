package wallplate.task.yaml;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What stands at one place of a task file. */
public sealed interface Entry {

    /** As it would be shown to the person who wrote it. */
    String shown();

    /**
     * A single value, as it was typed.
     *
     * @param text the typed characters, without quotes
     * @param quoted whether it stood in quotes, or came from a form field, which needs none
     * @param kind what YAML 1.1 takes it for
     */
    record Scalar(String text, boolean quoted, Kind kind) implements Entry {

        private static final int LONGEST_SHOWN = 60;

        @Override
        public String shown() {
            String plain = text.replaceAll("\\p{Cntrl}+", " ");
            return plain.length() <= LONGEST_SHOWN ? plain : plain.substring(0, LONGEST_SHOWN) + "...";
        }
    }

    /** What YAML 1.1 takes a typed value for. */
    enum Kind {
        TEXT,
        WHOLE_NUMBER,
        FRACTION,
        YES_OR_NO,
        NOTHING
    }

    /** Keys with what stands below each, in the order of the file. */
    record Group(Map<String, Entry> entries) implements Entry {

        public Group {
            entries = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(entries));
        }

        public Optional<Entry> get(String key) {
            return Optional.ofNullable(entries.get(key));
        }

        @Override
        public String shown() {
            return entries.isEmpty() ? "an empty group of keys" : "the keys " + String.join(", ", entries.keySet());
        }
    }

    /** Values in a row. */
    record Row(List<Entry> entries) implements Entry {

        public Row {
            entries = List.copyOf(entries);
        }

        @Override
        public String shown() {
            return "a list of " + entries.size();
        }
    }
}
