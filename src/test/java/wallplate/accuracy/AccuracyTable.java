package wallplate.accuracy;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The figures of a run as text, one line a group: what it is, how many values were drawn, how many measured, wrong
 * verdicts, all verdicts, and the 95th percentile of the errors in millimetres (degrees for the pitch).
 */
record AccuracyTable(Map<String, Row> rows) {

    private static final String TITLE = "# group drawn measured wrong verdicts p95";

    /** A group's figures. */
    record Row(int drawn, int measured, int wrong, int verdicts, double p95) {

        double coverage() {
            return drawn == 0 ? 1 : (double) measured / drawn;
        }

        static Row of(Figures figures) {
            return new Row(
                    figures.drawnCount(), figures.measuredCount(), figures.wrongCount(), figures.verdictCount(),
                    figures.errorQuantile(0.95));
        }
    }

    static AccuracyTable of(Scoring scoring) {
        Map<String, Row> rows = new LinkedHashMap<>();
        rows.put("all-but-pitch", Row.of(scoring.lengths()));
        rows.put("hopeless-taken", new Row(0, 0, scoring.hopelessTaken(), 0, 0));
        rows.put("readable-refused", new Row(0, 0, scoring.readableRefused(), 0, 0));
        scoring.byKey().forEach((key, figures) -> rows.put("key/" + key, Row.of(figures)));
        scoring.byCondition().forEach((name, figures) -> rows.put("condition/" + name, Row.of(figures)));
        return new AccuracyTable(rows);
    }

    static AccuracyTable parse(String text) {
        Map<String, Row> rows = new LinkedHashMap<>();
        text.lines().filter(line -> !line.isBlank() && !line.startsWith("#")).forEach(line -> {
            String[] cells = line.trim().split("\\s+");
            rows.put(cells[0], new Row(
                    Integer.parseInt(cells[1]), Integer.parseInt(cells[2]), Integer.parseInt(cells[3]),
                    Integer.parseInt(cells[4]), Double.parseDouble(cells[5])));
        });
        return new AccuracyTable(rows);
    }

    String text() {
        StringBuilder text = new StringBuilder(TITLE).append('\n');
        rows.forEach((group, row) -> text.append(String.format(
                Locale.ROOT, "%-32s %5d %5d %4d %5d %7.3f%n", group, row.drawn(), row.measured(), row.wrong(),
                row.verdicts(), row.p95()).replace("\r", "")));
        return text.toString();
    }

    /**
     * What is worse here than in the kept table by more than the margin: three values fewer measured in a group (or 3 %
     * of a large one), two more wrong verdicts (or 0.5 % of a large group), or a 95th percentile that grew by a quarter
     * and by more than 0.05.
     */
    List<String> worseThan(AccuracyTable kept) {
        List<String> worse = new ArrayList<>();
        kept.rows.forEach((group, before) -> {
            Row now = rows.getOrDefault(group, new Row(before.drawn(), 0, 0, 0, 0));
            int fewer = before.measured() - now.measured();
            if (fewer > Math.max(3, before.drawn() * 0.03)) {
                worse.add(group + ": measured " + now.measured() + " of " + now.drawn() + ", were " + before.measured());
            }
            int more = now.wrong() - before.wrong();
            if (more > Math.max(2, before.verdicts() * 0.005)) {
                worse.add(group + ": wrong verdicts " + now.wrong() + " of " + now.verdicts() + ", were " + before.wrong());
            }
            if (now.p95() > before.p95() * 1.25 && now.p95() > before.p95() + 0.05) {
                worse.add(String.format(Locale.ROOT, "%s: 95th percentile %.3f, was %.3f", group, now.p95(), before.p95()));
            }
        });
        return worse;
    }
}
