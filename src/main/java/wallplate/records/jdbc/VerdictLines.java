package wallplate.records.jdbc;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/** Criteria, each with a word or a few about it, as lines of a column. */
final class VerdictLines {

    private VerdictLines() {}

    /** What would break a line is left out. */
    static String write(Map<String, String> verdicts) {
        return verdicts.entrySet().stream()
                .filter(entry -> !entry.getKey().contains("\n") && !entry.getValue().contains("\n"))
                .map(entry -> entry.getKey() + "\t" + entry.getValue())
                .collect(Collectors.joining("\n"));
    }

    static Map<String, String> read(String lines) {
        Map<String, String> verdicts = new LinkedHashMap<>();
        lines.lines()
                .map(line -> line.split("\t", 2))
                .filter(pair -> pair.length == 2)
                .forEach(pair -> verdicts.put(pair[0], pair[1]));
        return verdicts;
    }
}
