package wallplate.web;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.springframework.boot.test.context.TestComponent;
import wallplate.marking.Verdict;
import wallplate.moderation.BlindSheet;
import wallplate.moderation.DrawOutcome;
import wallplate.moderation.Moderating;
import wallplate.moderation.Moderation;
import wallplate.moderation.SampleSize;
import wallplate.moderation.SamplingRule;
import wallplate.moderation.SecondMarks;
import wallplate.records.ClassListEntry;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.MarkChange;
import wallplate.records.MarkEntry;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;

/** Class sets whose every criterion is decided, and samples of them marked a second time. */
@TestComponent
public class DecidedSets {

    private static final Instant BEFORE = Instant.parse("2026-11-25T09:00:00Z");
    private static final String PICTURE = "%064x".formatted(8);

    private final ClassSets classSets;
    private final ScanFiles files;
    private final Sheets sheets;
    private final Moderating moderating;

    DecidedSets(ClassSets classSets, ScanFiles files, Sheets sheets, Moderating moderating) {
        this.classSets = classSets;
        this.files = files;
        this.sheets = sheets;
        this.moderating = moderating;
    }

    /** A set of so many sheets of learners called Learner 1, Learner 2 and so on, drawn from different seeds. */
    public ClassSet aSet(KeptTask task, int size, long seed) {
        List<ClassListEntry> learners = IntStream.rangeClosed(1, size)
                .mapToObj(number -> new ClassListEntry("Learner " + number, ""))
                .toList();
        ClassSet classSet = classSets.add("Eaves, 11B", "11B", learners, task, false);
        for (int number = 1; number <= size; number++) {
            String hash = "%064x".formatted(1000 * seed + number);
            ScanFileEntry file = files.add(classSet.id(), number + ".png", hash, 10).orElseThrow();
            SheetEntry sheet = sheets.page(file.id(), 1);
            sheets.keep(
                    sheet.id(), DrawnSheets.aSheet(task.task(), "a.png", 100 * seed + number), PICTURE, PICTURE, "{}");
        }
        decide(classSet);
        return classSet;
    }

    /** Decides what is open, in favour of the learner. */
    public void decide(ClassSet classSet) {
        sheets.marksOfSet(classSet.id()).stream()
                .filter(MarkEntry::isUndecided)
                .forEach(mark -> change(mark, Verdict.MET, mark.available()));
    }

    public void change(MarkEntry mark, Verdict verdict, double awarded) {
        sheets.change(
                mark.sheetId(),
                new MarkChange(mark.criterion(), Optional.of(verdict), awarded, "for the test", "teacher", BEFORE));
    }

    public Moderation drawn(ClassSet classSet, int size) {
        SamplingRule rule =
                new SamplingRule(SamplingRule.Choice.TOP_MIDDLE_BOTTOM, new SampleSize.Number(size), 5);
        return ((DrawOutcome.Drawn) moderating.draw(classSet.id(), rule, "M. Two", "teacher")).moderation();
    }

    /** Marks every sheet like the first marker, but so many marks lower, and hands them in. */
    public void markAndHandIn(Moderation moderation, double stricter) {
        moderation.sheets().forEach(sheet -> markLikeTheFirst(moderation, sheet.place(), stricter));
        moderating.handIn(moderation.id());
    }

    /** The first marker's marks, less so many in the first criterion that earned as much. */
    public void markLikeTheFirst(Moderation moderation, int place, double stricter) {
        BlindSheet sheet = moderating.sheet(moderation.id(), place).orElseThrow();
        Map<String, String> typed = new LinkedHashMap<>();
        double left = stricter;
        for (MarkEntry mark : sheets.marks(moderation.at(place).orElseThrow().sheetId())) {
            double taken = mark.awarded() >= left ? left : 0;
            left -= taken;
            typed.put(mark.criterion(), Double.toString(mark.awarded() - taken));
        }
        moderating.mark(sheet, SecondMarks.read(sheet.criteria(), typed));
    }
}
