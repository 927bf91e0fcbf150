package wallplate.web.sets;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import wallplate.marking.Verdict;
import wallplate.records.MarkEntry;
import wallplate.records.SheetEntry;
import wallplate.solver.Slip;
import wallplate.solver.SlipCatalogue;

/**
 * How a class did in one criterion.
 *
 * @param example one sheet's mark, for what was asked
 * @param scale the values along a scale; null where it is no length or angle
 * @param again the sheets that did not meet it, without those on which a slip explains it
 */
record Lesson(
        MarkEntry example,
        int met,
        int carried,
        int notMet,
        int undecided,
        @Nullable ToleranceScale scale,
        List<SlipMade> slips,
        List<Place> again) {

    private static final Map<String, String> SLIP_NAMES = slipNames();

    /** A sheet by its name, at the criterion spoken of. */
    record Place(String address, String name) {

        static Place of(SheetEntry sheet, String criterion) {
            return new Place("/sheets/" + sheet.id() + "#" + criterion, sheet.label());
        }
    }

    /** A known slip and the sheets on which it seems to have happened. */
    record SlipMade(String name, List<Place> sheets) {}

    private static Map<String, String> slipNames() {
        Map<String, String> names = new LinkedHashMap<>();
        for (Slip slip : SlipCatalogue.all()) {
            names.put(slip.id(), slip.name());
        }
        return names;
    }

    /** @param marks one criterion's, by sheet */
    static Lesson of(List<MarkEntry> marks, Map<Long, SheetEntry> sheets) {
        return new Lesson(
                marks.get(0),
                count(marks, Verdict.MET),
                count(marks, Verdict.CARRIED),
                count(marks, Verdict.NOT_MET),
                count(marks, Verdict.UNDECIDED),
                ToleranceScale.of(marks).orElse(null),
                slips(marks, sheets),
                marks.stream()
                        .filter(mark -> mark.verdict() == Verdict.NOT_MET && mark.slips().isEmpty())
                        .map(mark -> place(mark, sheets))
                        .toList());
    }

    private static int count(List<MarkEntry> marks, Verdict verdict) {
        return (int) marks.stream().filter(mark -> mark.verdict() == verdict).count();
    }

    private static List<SlipMade> slips(List<MarkEntry> marks, Map<Long, SheetEntry> sheets) {
        Map<String, List<Place>> bySlip = new LinkedHashMap<>();
        marks.forEach(mark -> mark.slips()
                .forEach(slip -> bySlip.computeIfAbsent(slip, one -> new ArrayList<>()).add(place(mark, sheets))));
        return bySlip.entrySet().stream()
                .map(entry -> new SlipMade(slipName(entry.getKey()), entry.getValue()))
                .sorted(Comparator.comparingInt((SlipMade slip) -> -slip.sheets().size()).thenComparing(SlipMade::name))
                .toList();
    }

    private static String slipName(String id) {
        return SLIP_NAMES.getOrDefault(id, id.replace('-', ' '));
    }

    private static Place place(MarkEntry mark, Map<Long, SheetEntry> sheets) {
        return Place.of(sheets.get(mark.sheetId()), mark.criterion());
    }

    public int judged() {
        return met + carried + notMet;
    }

    public int sheets() {
        return judged() + undecided;
    }
}
