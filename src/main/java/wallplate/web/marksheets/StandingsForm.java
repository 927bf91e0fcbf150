package wallplate.web.marksheets;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import wallplate.marksheets.Column;
import wallplate.marksheets.Line;
import wallplate.marksheets.MarkSheet;
import wallplate.marksheets.MarkSheets.OnPaper;
import wallplate.marksheets.MarkSheets.Said;
import wallplate.marksheets.Standing;

/**
 * What is said in a draft about learners and tasks: who was late, absent or excused, and marks that were given on paper.
 *
 * @param standings the standing chosen, by place and learner such as {@code 1-17}
 * @param onPaper the marks as typed, by the same
 * @param said what they come to
 * @param faults whose marks are none, each with what was typed
 */
record StandingsForm(Map<String, String> standings, Map<String, String> onPaper, List<Said> said, List<String> faults) {

    private static final String STANDING = "standing-";
    private static final String ON_PAPER = "marks-";

    StandingsForm {
        standings = Map.copyOf(standings);
        onPaper = Map.copyOf(onPaper);
        said = List.copyOf(said);
        faults = List.copyOf(faults);
    }

    /** As it is kept. */
    static StandingsForm of(List<Said> said) {
        Map<String, String> standings = new HashMap<>();
        Map<String, String> onPaper = new HashMap<>();
        said.forEach(one -> {
            standings.put(entry(one.place(), one.learnerId()), one.standing().word());
            one.onPaper().ifPresent(marks -> onPaper.put(entry(one.place(), one.learnerId()), plain(marks.awarded())));
        });
        return new StandingsForm(standings, onPaper, said, List.of());
    }

    /** Whether anything was sent of it at all. */
    static boolean isIn(Map<String, String> fields) {
        return fields.keySet().stream().anyMatch(name -> name.startsWith(STANDING));
    }

    /** As it was sent for a draft. */
    static StandingsForm of(Map<String, String> fields, MarkSheet draft) {
        Map<String, String> standings = fields(fields, STANDING);
        Map<String, String> onPaper = fields(fields, ON_PAPER);
        Map<Integer, BigDecimal> outOf = outOf(draft);
        List<Said> said = new ArrayList<>();
        List<String> faults = new ArrayList<>();
        for (Line line : draft.lines()) {
            for (Column column : draft.columns()) {
                String entry = entry(column.place(), line.learnerId().orElseThrow());
                String typed = onPaper.getOrDefault(entry, "").strip();
                Optional<OnPaper> marks = marks(typed, outOf.getOrDefault(column.place(), BigDecimal.ZERO));
                if (marks.isEmpty() && !typed.isEmpty()) {
                    faults.add(line.name() + ", found: \"" + typed + "\"");
                }
                said(column.place(), line.learnerId().orElseThrow(), standings.getOrDefault(entry, ""), marks)
                        .ifPresent(said::add);
            }
        }
        return new StandingsForm(standings, onPaper, said, faults);
    }

    private static Optional<Said> said(int place, long learner, String word, Optional<OnPaper> marks) {
        return switch (word) {
            case "absent", "excused" -> Optional.of(new Said(place, learner, Standing.of(word), Optional.empty()));
            case "late" -> Optional.of(new Said(place, learner, Standing.LATE, marks));
            default -> marks.map(some -> new Said(place, learner, Standing.MARKED, marks));
        };
    }

    private static Optional<OnPaper> marks(String typed, BigDecimal outOf) {
        return TypedMarks.of(typed)
                .filter(awarded -> awarded.compareTo(outOf) <= 0)
                .map(awarded -> new OnPaper(awarded, outOf));
    }

    /** Out of how many marks a task is, by its place; nothing while no sheet of it has marks. */
    static Map<Integer, BigDecimal> outOf(MarkSheet draft) {
        Map<Integer, BigDecimal> outOf = new HashMap<>();
        for (Column column : draft.columns()) {
            draft.lines().stream()
                    .map(line -> line.entries().get(column.place() - 1).available())
                    .filter(available -> available.signum() > 0)
                    .max(Comparator.naturalOrder())
                    .ifPresent(most -> outOf.put(column.place(), most));
        }
        return outOf;
    }

    private static Map<String, String> fields(Map<String, String> fields, String kind) {
        return fields.entrySet().stream()
                .filter(field -> field.getKey().startsWith(kind))
                .collect(Collectors.toMap(field -> field.getKey().substring(kind.length()), Map.Entry::getValue));
    }

    private static String entry(int place, long learner) {
        return place + "-" + learner;
    }

    private static String plain(BigDecimal marks) {
        return marks.signum() == 0 ? "0" : marks.stripTrailingZeros().toPlainString();
    }
}
