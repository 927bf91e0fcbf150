package wallplate.analysis;

import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wallplate.records.MarkEntry;
import wallplate.statistics.ItemAnalysis;
import wallplate.statistics.ScoreTable;
import wallplate.statistics.ScoredItem;

/** The criteria of a class set as items. */
public final class SetItems {

    private SetItems() {}

    /** The analysis of a set, in the guideline's order; a sheet with an undecided criterion is left out. */
    public static ItemAnalysis of(List<MarkEntry> marks) {
        Map<String, ScoredItem> items = new LinkedHashMap<>();
        Map<Long, Map<String, Double>> bySheet = new LinkedHashMap<>();
        marks.stream().sorted(Comparator.comparingInt(MarkEntry::position)).forEach(mark -> {
            items.putIfAbsent(mark.criterion(), new ScoredItem(mark.criterion(), mark.title(), mark.available()));
            Map<String, Double> sheet = bySheet.computeIfAbsent(mark.sheetId(), id -> new HashMap<>());
            if (!mark.isUndecided()) {
                sheet.put(mark.criterion(), mark.awarded());
            }
        });
        return ItemAnalysis.of(ScoreTable.of(List.copyOf(items.values()), List.copyOf(bySheet.values())));
    }
}
