package wallplate.records;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wallplate.sheet.SheetCode;

/**
 * Says whose sheet is whose: what a person said stands; then the printed code, then the file's name, then the order.
 *
 * <p>In order, a sheet gets the first free learner after the learner of the sheet before it, so that one correction
 * carries the rest of the pile along. A sheet whose code or name says a learner who has a sheet already gets nobody: a
 * person has to look at the two.
 */
public final class SheetMatching {

    /** A name that stands in more files than this, such as the teacher's or a year, says nothing about a learner. */
    private static final int MOST_FILES_OF_ONE = 2;

    private final String taskId;
    private final List<Learner> learners;
    private final List<Pile> pile;
    private final Map<Long, Learner> byCode = new LinkedHashMap<>();
    private final Map<Long, Learner> byFileName = new LinkedHashMap<>();

    /**
     * A sheet as it lies in the pile.
     *
     * @param byHand whether a person said whose it is
     * @param learnerId whose it is; looked at only where a person said so
     */
    public record Pile(
            long sheetId, String fileName, Optional<SheetCode> code, boolean byHand, Optional<Long> learnerId) {}

    /** Whose sheet it is; nobody's where empty. */
    public record Match(long sheetId, Optional<Long> learnerId, MatchedBy by) {}

    /**
     * @param taskId of the set; codes of other tasks say nothing
     * @param learners in the order of the class list
     * @param pile in the order in which the sheets came
     */
    public SheetMatching(String taskId, List<Learner> learners, List<Pile> pile) {
        this.taskId = taskId;
        this.learners = List.copyOf(learners);
        this.pile = List.copyOf(pile);
        claim();
    }

    private void claim() {
        Map<String, Learner> codes = new HashMap<>();
        learners.forEach(learner -> codes.putIfAbsent(learner.sheetCode(), learner));
        // Sheets that were printed before the list had candidate numbers name the place in it.
        learners.forEach(learner -> codes.putIfAbsent(learner.placeCode(), learner));
        FileNames names = new FileNames(learners);
        Map<String, Optional<Learner>> named = new HashMap<>();
        Map<Learner, Integer> files = new HashMap<>();
        for (Pile sheet : pile) {
            sheet.code()
                    .filter(code -> code.taskId().equals(taskId))
                    .map(code -> codes.get(code.learner()))
                    .ifPresent(learner -> byCode.put(sheet.sheetId(), learner));
            named.computeIfAbsent(sheet.fileName(), names::learnerIn).ifPresent(learner -> {
                byFileName.put(sheet.sheetId(), learner);
                files.merge(learner, 1, Integer::sum);
            });
        }
        byFileName.values().removeIf(learner -> files.get(learner) > MOST_FILES_OF_ONE);
    }

    /** Whom the sheet's own code or file name says, whether or not the sheet is that learner's. */
    public Optional<Learner> said(long sheetId) {
        return Optional.ofNullable(byCode.getOrDefault(sheetId, byFileName.get(sheetId)));
    }

    /** Every sheet of the pile with its learner, in the order of the pile. */
    public List<Match> matches() {
        Map<Long, Match> matches = new HashMap<>();
        Set<Long> taken = new HashSet<>();
        for (Pile sheet : pile) {
            if (sheet.byHand()) {
                sheet.learnerId().ifPresent(taken::add);
                matches.put(sheet.sheetId(), new Match(sheet.sheetId(), sheet.learnerId(), MatchedBy.HAND));
            }
        }
        give(byCode, MatchedBy.CODE, matches, taken);
        give(byFileName, MatchedBy.FILE_NAME, matches, taken);
        inOrder(matches, taken);
        return pile.stream().map(sheet -> matches.get(sheet.sheetId())).toList();
    }

    private void give(Map<Long, Learner> said, MatchedBy by, Map<Long, Match> matches, Set<Long> taken) {
        for (Pile sheet : pile) {
            Learner learner = said.get(sheet.sheetId());
            if (learner != null && !matches.containsKey(sheet.sheetId())) {
                Optional<Long> free = taken.add(learner.id()) ? Optional.of(learner.id()) : Optional.empty();
                matches.put(sheet.sheetId(), new Match(sheet.sheetId(), free, by));
            }
        }
    }

    private void inOrder(Map<Long, Match> matches, Set<Long> taken) {
        List<Long> order = learners.stream().map(Learner::id).toList();
        int last = -1;
        for (Pile sheet : pile) {
            Match match = matches.get(sheet.sheetId());
            if (match == null) {
                Optional<Long> free = firstFree(order, last + 1, taken);
                free.ifPresent(taken::add);
                match = new Match(sheet.sheetId(), free, MatchedBy.ORDER);
                matches.put(sheet.sheetId(), match);
            }
            last = match.learnerId().map(order::indexOf).filter(at -> at >= 0).orElse(last);
        }
    }

    /** The first free learner from a place of the list on, from its start again after the last. */
    private static Optional<Long> firstFree(List<Long> order, int from, Set<Long> taken) {
        List<Long> turned = new ArrayList<>(order.subList(from, order.size()));
        turned.addAll(order.subList(0, from));
        return turned.stream().filter(learner -> !taken.contains(learner)).findFirst();
    }
}
