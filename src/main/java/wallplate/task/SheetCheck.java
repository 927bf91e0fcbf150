package wallplate.task;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wallplate.task.yaml.Entry;

/** Checks the sheet that a task asks for: its size, which way it lies, and the length of the reference bar. */
final class SheetCheck {

    private static final String KEY = "sheet";
    private static final String BAR = "sheet.reference-bar";
    private static final Set<String> KEYS = new LinkedHashSet<>(List.of("size", "orientation", "reference-bar"));

    /** The bar's nominal length where the task does not say, in millimetres on paper. */
    private static final double USUAL_BAR = 100;

    private static final double SHORTEST_BAR = 20;

    /** What the borders and the bar's ticks take of the sheet's width, in millimetres. */
    private static final double BESIDE_BAR = 40;

    private final EntryReader reader;

    SheetCheck(EntryReader reader) {
        this.reader = reader;
    }

    Optional<SheetFormat> sheet() {
        Optional<Entry> found = reader.at(KEY);
        if (found.isPresent() && !(found.get() instanceof Entry.Group)) {
            reader.fault(KEY, found.get().shown(), "a group of the keys " + String.join(", ", KEYS));
            return Optional.empty();
        }
        found.map(Entry.Group.class::cast).ifPresent(group -> group.entries().keySet().stream()
                .filter(key -> !KEYS.contains(key))
                .forEach(key -> reader.unknownKey(KEY + "." + key, key, KEYS)));
        Optional<String> size = reader.word("sheet.size", PaperSize.names());
        Optional<String> orientation = reader.word("sheet.orientation", List.of("landscape", "portrait"));
        if (size.isEmpty() || orientation.isEmpty()) {
            referenceBar(PaperSize.A0.longSideMm());
            return Optional.empty();
        }
        return format(PaperSize.valueOf(size.get()), orientation.get().equals("landscape"));
    }

    private Optional<SheetFormat> format(PaperSize paper, boolean landscape) {
        double width = landscape ? paper.longSideMm() : paper.shortSideMm();
        double height = landscape ? paper.shortSideMm() : paper.longSideMm();
        return referenceBar(width).map(bar -> new SheetFormat(paper.name(), width, height, bar));
    }

    private Optional<Double> referenceBar(double sheetWidthMm) {
        if (reader.at(BAR).isEmpty()) {
            return Optional.of(USUAL_BAR);
        }
        double longest = sheetWidthMm - BESIDE_BAR;
        String accepted = "a length in millimetres on paper from %s to %s"
                .formatted(PlainNumber.text(SHORTEST_BAR), PlainNumber.text(longest));
        return reader.numberWithin(BAR, SHORTEST_BAR, longest, accepted);
    }
}
