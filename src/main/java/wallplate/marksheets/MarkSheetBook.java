package wallplate.marksheets;

import java.math.BigDecimal;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import wallplate.audit.AuditedEvent;
import wallplate.ownership.Share;
import wallplate.records.ClassSets;
import wallplate.records.Learner;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;

/** Mark sheets with their lines: drafts that follow the marks, and submitted ones with their corrections. */
@Service
public class MarkSheetBook {

    private final MarkSheets kept;
    private final ClassSets classSets;
    private final Sheets sheets;
    private final Clock clock;
    private final ApplicationEventPublisher events;

    MarkSheetBook(
            MarkSheets kept, ClassSets classSets, Sheets sheets, Clock clock, ApplicationEventPublisher events) {
        this.kept = kept;
        this.classSets = classSets;
        this.sheets = sheets;
        this.clock = clock;
        this.events = events;
    }

    @Transactional(readOnly = true)
    public Optional<MarkSheet> find(long id) {
        return kept.find(id).map(this::whole);
    }

    private MarkSheet whole(Heading heading) {
        List<Column> columns = kept.columns(heading.id());
        if (heading.isDraft()) {
            return new MarkSheet(heading, columns, draftLines(heading.id(), columns), List.of());
        }
        return frozen(heading, columns, kept.frozenLines(heading.id()), kept.corrections(heading.id()));
    }

    /** The submitted mark sheets of a term of a school year, the newest first. */
    @Transactional(readOnly = true)
    public List<MarkSheet> submitted(String schoolYear, String term, Share share) {
        MarkSheets.Frozen frozen = kept.frozen(schoolYear, term);
        return kept.submitted(schoolYear, term, share).stream()
                .map(heading -> frozen(
                        heading,
                        frozen.columns().getOrDefault(heading.id(), List.of()),
                        frozen.lines().getOrDefault(heading.id(), List.of()),
                        frozen.corrections().getOrDefault(heading.id(), List.of())))
                .toList();
    }

    /**
     * What a learner reached in a submitted mark sheet, corrections included.
     *
     * @param percentage empty where every task was excused
     */
    public record LearnerResult(Heading heading, Optional<BigDecimal> percentage) {}

    /** The results of a learner, under whatever class the learner was in; the newest first. */
    @Transactional(readOnly = true)
    public List<LearnerResult> resultsOf(long learnerId, Share share) {
        return kept.placesOf(learnerId, share).stream()
                .flatMap(place -> find(place.markSheetId()).stream()
                        .flatMap(sheet -> sheet.lines().stream()
                                .filter(line -> line.number() == place.line())
                                .map(line -> new LearnerResult(
                                        sheet.heading(), sheet.result(line).percentage()))))
                .toList();
    }

    private static MarkSheet frozen(
            Heading heading, List<Column> columns, List<Line> submitted, List<Correction> corrections) {
        Map<Integer, Line> lines = new LinkedHashMap<>();
        submitted.forEach(line -> lines.put(line.number(), line));
        for (Correction correction : corrections) {
            lines.computeIfPresent(
                    correction.line(), (number, line) -> line.with(correction.place() - 1, correction.entry()));
        }
        return new MarkSheet(heading, columns, List.copyOf(lines.values()), corrections);
    }

    /** Everybody who may have drawn one of the sets, in the order of the class list. */
    private List<Line> draftLines(long id, List<Column> columns) {
        Map<Long, Learner> learners = new LinkedHashMap<>();
        List<Map<Long, Entry>> byColumn = new ArrayList<>();
        for (Column column : columns) {
            Optional<Long> set = column.classSetId();
            set.ifPresent(one -> classSets.learnersOfSet(one).forEach(learner -> learners.put(learner.id(), learner)));
            byColumn.add(set.map(this::entries).orElseGet(HashMap::new));
        }
        for (MarkSheets.Said said : kept.said(id)) {
            Map<Long, Entry> entries = byColumn.get(said.place() - 1);
            Entry present = entries.getOrDefault(said.learnerId(), unknownOf(entries));
            entries.put(said.learnerId(), said(present, said));
        }
        List<Line> lines = new ArrayList<>();
        learners.values().stream()
                .sorted(Comparator.comparingInt(Learner::position).thenComparingLong(Learner::id))
                .forEach(learner -> lines.add(new Line(
                        lines.size() + 1,
                        Optional.of(learner.id()),
                        learner.name(),
                        learner.candidateNumber(),
                        byColumn.stream()
                                .map(entries -> entries.getOrDefault(learner.id(), Entry.open()))
                                .toList())));
        return lines;
    }

    private Map<Long, Entry> entries(long classSetId) {
        Map<Long, Entry> entries = new HashMap<>();
        for (SheetEntry sheet : sheets.of(classSetId)) {
            boolean decided = sheet.state() == SheetState.READ && sheet.undecided() == 0 && sheet.available() > 0;
            sheet.learner()
                    .ifPresent(learner -> entries.put(
                            learner.id(),
                            decided
                                    ? new Entry(
                                            Standing.MARKED,
                                            BigDecimal.valueOf(sheet.awarded()),
                                            BigDecimal.valueOf(sheet.available()))
                                    : Entry.open()));
        }
        return entries;
    }

    /** The entry of a learner without a sheet: out of as many marks as the others', so that it can be corrected later. */
    private static Entry unknownOf(Map<Long, Entry> entries) {
        BigDecimal available =
                entries.values().stream().map(Entry::available).max(Comparator.naturalOrder()).orElse(BigDecimal.ZERO);
        return new Entry(Standing.OPEN, BigDecimal.ZERO, available);
    }

    /**
     * A sheet that is late is still open while it waits for a person, unless it was marked on paper; marks on paper give way
     * to those of a sheet that was decided since.
     */
    private static Entry said(Entry present, MarkSheets.Said said) {
        boolean counts = said.standing() == Standing.MARKED || said.standing() == Standing.LATE;
        if (counts && present.standing() == Standing.OPEN) {
            return said.onPaper()
                    .map(marks -> new Entry(said.standing(), marks.awarded(), marks.available()))
                    .orElse(present);
        }
        return present.as(said.standing());
    }

    /** What became of the wish to submit. */
    public sealed interface Outcome {}

    public record Submitted() implements Outcome {}

    /** @param open the lines that have an open entry */
    public record StillOpen(List<Line> open) implements Outcome {}

    public record NobodyInIt() implements Outcome {}

    public record SubmittedBefore() implements Outcome {}

    /** Freezes a draft as it stands now, where nothing in it is open. */
    @Transactional
    public Outcome submit(MarkSheet draft, String submittedBy) {
        MarkSheet now = whole(draft.heading());
        List<Line> open = now.lines().stream()
                .filter(line -> line.entries().stream().anyMatch(entry -> entry.standing() == Standing.OPEN))
                .toList();
        if (!open.isEmpty()) {
            return new StillOpen(open);
        }
        if (now.lines().isEmpty()) {
            return new NobodyInIt();
        }
        if (!kept.submit(draft.heading().id(), now.lines(), submittedBy)) {
            return new SubmittedBefore();
        }
        events.publishEvent(new AuditedEvent(
                "mark-sheet-submitted %d %d".formatted(now.lines().size(), now.columns().size()),
                address(draft.heading())));
        return new Submitted();
    }

    /** Writes a correction of a submitted mark sheet down; the line and the place must be in it. */
    @Transactional
    public void correct(MarkSheet submitted, int line, int place, Entry entry, String reason, String correctedBy) {
        boolean there = submitted.lines().stream().anyMatch(one -> one.number() == line)
                && submitted.columns().stream().anyMatch(one -> one.place() == place);
        if (submitted.heading().isDraft() || !there || reason.isBlank() || entry.standing() == Standing.OPEN) {
            throw new IllegalArgumentException("a correction has a reason and belongs to an entry of a submitted mark sheet");
        }
        kept.correct(
                submitted.heading().id(), new Correction(line, place, entry, reason, correctedBy, clock.instant()));
        events.publishEvent(new AuditedEvent(
                "mark-sheet-corrected " + line + " " + place, address(submitted.heading())));
    }

    private static String address(Heading heading) {
        return "/mark-sheets/" + heading.id();
    }
}
