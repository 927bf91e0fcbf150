package wallplate.web.sets;

import java.util.List;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.FileState;
import wallplate.records.Learner;
import wallplate.records.Progress;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.web.page.Words;

/** What the page of a class set shows of its standing. */
@Component
class SetStanding {

    private final ClassSets classSets;
    private final ScanFiles files;
    private final Sheets sheets;
    private final ProgressStream stream;
    private final Words words;

    SetStanding(ClassSets classSets, ScanFiles files, Sheets sheets, ProgressStream stream, Words words) {
        this.classSets = classSets;
        this.files = files;
        this.sheets = sheets;
        this.stream = stream;
        this.words = words;
    }

    void show(ClassSet classSet, Model model) {
        List<SheetEntry> entries = sheets.of(classSet.id());
        List<ScanFileEntry> received = files.of(classSet.id());
        List<Learner> learners = classSets.learnersOfSet(classSet.id());
        Progress progress = Progress.of(entries);
        model.addAttribute("classSet", classSet);
        model.addAttribute("sheets", entries.stream().map(this::row).toList());
        model.addAttribute("first", entries.stream().filter(SheetEntry::needsPerson).map(this::row).toList());
        model.addAttribute("progress", progress);
        model.addAttribute("timeLeft", stream.timeLeft(classSet.id(), progress).orElse(null));
        model.addAttribute("stopped", received.stream().anyMatch(file -> file.state() == FileState.STOPPED));
        model.addAttribute("refused", received.stream().filter(file -> file.state() == FileState.REFUSED).toList());
        model.addAttribute("learners", learners);
        model.addAttribute("whose", learners.isEmpty() ? null : Whose.of(classSet, entries, learners));
    }

    private SheetRow row(SheetEntry sheet) {
        return SheetRow.of(sheet, words);
    }
}
