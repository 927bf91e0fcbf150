package wallplate.moderation;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.records.ClassSets;
import wallplate.records.KeptAssessment;
import wallplate.records.MarkChange;
import wallplate.records.MarkEntry;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;

/** Draws samples, takes second marks in, compares and carries decisions out. */
@Component
public class Moderating {

    private final Moderations moderations;
    private final Sheets sheets;
    private final ClassSets classSets;
    private final Clock clock;

    Moderating(Moderations moderations, Sheets sheets, ClassSets classSets, Clock clock) {
        this.moderations = moderations;
        this.sheets = sheets;
        this.classSets = classSets;
        this.clock = clock;
    }

    /** Draws from the sheets that were read and whose every criterion is decided. */
    @Transactional
    public DrawOutcome draw(long classSetId, SamplingRule rule, String moderator, String drawnBy) {
        List<SheetEntry> all = sheets.of(classSetId);
        Map<Long, SheetEntry> candidates = all.stream()
                .filter(sheet -> sheet.state() == SheetState.READ && sheet.undecided() == 0)
                .collect(Collectors.toMap(SheetEntry::id, Function.identity()));
        if (candidates.isEmpty()) {
            return new DrawOutcome.NotDrawn(
                    "No sheet can be drawn yet: a sheet must be read and its every criterion decided. Check the sheets first.");
        }
        List<Long> drawn = Sampling.draw(
                rule,
                candidates.values().stream()
                        .map(sheet -> new Candidate(sheet.id(), sheet.awarded()))
                        .toList());
        return new DrawOutcome.Drawn(moderations.add(new Draw(
                classSetId,
                rule,
                candidates.size(),
                all.size() - candidates.size(),
                moderator,
                drawnBy,
                drawn.stream().map(id -> asItStands(candidates.get(id))).toList())));
    }

    private DrawnSheet asItStands(SheetEntry sheet) {
        List<FirstMark> marks = sheets.marks(sheet.id()).stream()
                .map(mark -> new FirstMark(
                        mark.criterion(), mark.position(), mark.title(), mark.available(), mark.awarded()))
                .toList();
        return new DrawnSheet(sheet.id(), sheet.awarded(), sheet.available(), marks);
    }

    /** The sheet at a place of the sample, for the second marker; empty where it is not there or can no longer be seen. */
    public Optional<BlindSheet> sheet(long moderationId, int place) {
        return moderations.find(moderationId).flatMap(moderation -> moderation
                .at(place)
                .flatMap(sampled -> sheets.find(sampled.sheetId()))
                .filter(sheet -> sheet.pagePicture().isPresent() && sheet.screenPicture().isPresent())
                .flatMap(sheet -> sheets.assessment(sheet.id()).map(found -> blind(moderation, place, sheet, found))));
    }

    private BlindSheet blind(Moderation moderation, int place, SheetEntry sheet, KeptAssessment found) {
        Map<String, Double> given = moderations.secondMarks(moderation.id(), place);
        List<BlindSheet.Criterion> criteria = found.marked().marks().stream()
                .map(mark -> criterion(mark, given.get(mark.criterion())))
                .toList();
        return new BlindSheet(
                moderation,
                place,
                moderation.sheets().size(),
                found.page().widthMm(),
                found.page().heightMm(),
                sheet.pagePicture().orElseThrow(),
                sheet.screenPicture().orElseThrow(),
                criteria);
    }

    private static BlindSheet.Criterion criterion(Mark mark, @Nullable Double given) {
        return new BlindSheet.Criterion(
                mark.criterion(),
                mark.title(),
                mark.available(),
                mark.expected(),
                mark.tolerance().map(OptionalDouble::of).orElseGet(OptionalDouble::empty),
                given == null ? OptionalDouble.empty() : OptionalDouble.of(given));
    }

    /**
     * Keeps the second marks of one sheet.
     *
     * @throws IllegalStateException where the second marks were handed in already, or some are missing
     */
    @Transactional
    public void mark(BlindSheet sheet, SecondMarks second) {
        Moderation moderation = moderations.take(sheet.moderation().id()).orElseThrow();
        if (moderation.isHandedIn() || !second.isComplete()) {
            throw new IllegalStateException("second marks that are handed in or incomplete are not kept");
        }
        long sheetId = moderation.at(sheet.place()).orElseThrow().sheetId();
        moderations.mark(moderation.id(), sheet.place(), second.marks(), total(sheetId, second.marks()));
    }

    /** Added up as the guideline adds up, with its maxima for groups of criteria. */
    private double total(long sheetId, Map<String, Double> second) {
        MarkedSheet first = sheets.assessment(sheetId).orElseThrow().marked();
        List<Mark> marks = first.marks().stream()
                .map(mark -> new Mark(
                        mark.criterion(),
                        mark.title(),
                        mark.key(),
                        mark.verdict(),
                        second.get(mark.criterion()),
                        mark.available(),
                        mark.expected(),
                        mark.measured(),
                        mark.tolerance(),
                        mark.slips(),
                        mark.feedback()))
                .toList();
        return new MarkedSheet(first.guideline(), marks, first.groups()).awarded();
    }

    /** Hands the second marks in; false where a sheet is not marked yet. */
    @Transactional
    public boolean handIn(long moderationId) {
        boolean complete = moderations.take(moderationId).orElseThrow().isMarked();
        if (complete) {
            moderations.handIn(moderationId);
        }
        return complete;
    }

    /** The comparison; empty until the second marks are handed in, so that they are given without it. */
    public Optional<AgreementReport> report(long moderationId) {
        return moderations
                .find(moderationId)
                .filter(Moderation::isHandedIn)
                .map(found -> AgreementReport.of(moderations.pairs(moderationId), moderations.totals(moderationId)));
    }

    /**
     * Writes a decision down and carries it out; what it did stands in the entry.
     *
     * @param decisionsSeen how many decisions the person who decides knows of
     * @return empty, and nothing was done, where there are others: so that a decision sent twice adjusts once
     * @throws IllegalStateException where the second marks were not handed in
     */
    @Transactional
    public Optional<DecisionEntry> decide(
            long moderationId, Decision decision, String reason, String decidedBy, int decisionsSeen) {
        Moderation moderation = moderations.take(moderationId).orElseThrow();
        if (!moderation.isHandedIn()) {
            throw new IllegalStateException("a decision before the second marks were handed in");
        }
        if (moderation.decisions().size() != decisionsSeen) {
            return Optional.empty();
        }
        String outcome = carryOut(moderation, decision, reason, decidedBy);
        DecisionEntry entry = new DecisionEntry(decision, reason, decidedBy, now(), outcome);
        moderations.decide(moderationId, entry);
        return Optional.of(entry);
    }

    private String carryOut(Moderation moderation, Decision decision, String reason, String decidedBy) {
        if (decision instanceof Decision.Adjust adjust) {
            return adjust(moderation, adjust, reason, decidedBy).words();
        }
        return decision instanceof Decision.MarkAgain ? markAgain(moderation.classSetId()) : "The marks stand as they are.";
    }

    private Adjustment adjust(Moderation moderation, Decision.Adjust decision, String reason, String decidedBy) {
        Map<Long, SheetEntry> byId = sheets.of(moderation.classSetId()).stream()
                .collect(Collectors.toMap(SheetEntry::id, Function.identity()));
        List<Adjustment.Standing> standings = new ArrayList<>();
        for (MarkEntry mark : sheets.marksOfSet(moderation.classSetId())) {
            if (mark.criterion().equals(decision.criterion())) {
                standings.add(new Adjustment.Standing(mark, byId.get(mark.sheetId()).awarded()));
            }
        }
        Adjustment adjustment = Adjustment.of(decision, standings);
        for (Adjustment.Change change : adjustment.changes()) {
            MarkEntry mark = change.mark();
            sheets.change(
                    mark.sheetId(),
                    new MarkChange(
                            mark.criterion(),
                            Optional.of(mark.verdict()),
                            change.after(),
                            "Moderation %d: %s".formatted(moderation.id(), reason),
                            decidedBy,
                            now()));
        }
        return adjustment;
    }

    /** To the microsecond, which is what both databases keep. */
    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }

    private String markAgain(long classSetId) {
        List<SheetEntry> all = sheets.of(classSetId);
        all.forEach(sheet -> sheets.setChecked(sheet.id(), false));
        classSets.withdraw(classSetId);
        return "%d sheets count as not checked; the marks are not released until they are released anew.".formatted(all.size());
    }
}
