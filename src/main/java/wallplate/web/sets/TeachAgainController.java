package wallplate.web.sets;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.analysis.FollowUpGroup;
import wallplate.drafting.DrawingSheets;
import wallplate.drafting.SheetOwner;
import wallplate.ownership.Kind;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.MarkEntry;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.solver.FollowUpTask;
import wallplate.task.DrawingTask;
import wallplate.web.access.Reach;
import wallplate.web.page.NotFound;
import wallplate.web.page.Words;

/**
 * What to teach again: which criteria the class did not meet, how the values lie, which slips were made and by whom, and
 * who practises what with another version of the task.
 */
@Controller
class TeachAgainController {

    private static final String NO_ROOM =
            "The sizes of this task leave no room for another version that is as hard. Set a task of its own.";

    private final ClassSets classSets;
    private final Sheets sheets;
    private final Tasks tasks;
    private final Words words;
    private final Reach reach;

    TeachAgainController(ClassSets classSets, Sheets sheets, Tasks tasks, Words words, Reach reach) {
        this.classSets = classSets;
        this.sheets = sheets;
        this.tasks = tasks;
        this.words = words;
        this.reach = reach;
    }

    /**
     * A group of learners with the exercise made for it.
     *
     * @param exercise null where it was not made yet
     * @param ownSet the class set for it; null where it was not made yet
     */
    record Practice(FollowUpGroup group, String name, @Nullable KeptTask exercise, @Nullable ClassSet ownSet) {}

    @GetMapping("/class-sets/{id}/teach-again")
    String teachAgain(@PathVariable long id, Model model) {
        ClassSet classSet = found(id);
        List<SheetEntry> entries = sheets.of(id);
        List<MarkEntry> marks = sheets.marksOfSet(id);
        List<Lesson> lessons = lessons(marks, entries);
        model.addAttribute("classSet", classSet);
        model.addAttribute("lessons", lessons.stream().filter(lesson -> lesson.notMet() > 0).toList());
        model.addAttribute("held", lessons.stream().filter(lesson -> lesson.notMet() == 0).toList());
        model.addAttribute("groups", practices(classSet, FollowUpGroup.of(entries, marks)));
        model.addAttribute("sheetCount", entries.size());
        return "sets/teach-again";
    }

    /** Most missed first. */
    private static List<Lesson> lessons(List<MarkEntry> marks, List<SheetEntry> entries) {
        Map<Long, SheetEntry> byId =
                entries.stream().collect(Collectors.toMap(SheetEntry::id, Function.identity()));
        Map<String, List<MarkEntry>> byCriterion = new LinkedHashMap<>();
        marks.forEach(mark -> byCriterion.computeIfAbsent(mark.criterion(), one -> new ArrayList<>()).add(mark));
        return byCriterion.values().stream()
                .map(ofOne -> Lesson.of(ofOne, byId))
                .sorted(Comparator.comparingInt((Lesson lesson) -> -lesson.notMet())
                        .thenComparingInt(lesson -> lesson.example().position()))
                .toList();
    }

    private List<Practice> practices(ClassSet classSet, List<FollowUpGroup> groups) {
        List<ClassSet> ofClass = groups.isEmpty() ? List.of() : classSets.ofClass(classSet.classId(), reach.share());
        return groups.stream()
                .map(group -> {
                    Optional<KeptTask> exercise = exercise(classSet, group.part());
                    Optional<ClassSet> ownSet = exercise.flatMap(task -> ofClass.stream()
                            .filter(one -> one.taskId() == task.id())
                            .findFirst());
                    return new Practice(
                            group, words.part(group.part()), exercise.orElse(null), ownSet.orElse(null));
                })
                .toList();
    }

    private Optional<KeptTask> exercise(ClassSet classSet, String part) {
        return tasks.named(FollowUpTask.id(classSet.task(), part));
    }

    /** Keeps the version of the task for a group and makes a class set for it, where they are not there yet. */
    @PostMapping("/class-sets/{id}/teach-again/{part}")
    String makeExercise(@PathVariable long id, @PathVariable String part, RedirectAttributes redirect) {
        ClassSet classSet = found(id);
        group(id, part);
        Optional<KeptTask> exercise = exercise(classSet, part)
                .or(() -> FollowUpTask.of(classSet.task(), part, words.part(part)).map(this::keep));
        if (exercise.isEmpty()) {
            redirect.addFlashAttribute("wrong", NO_ROOM);
        } else {
            if (classSets.ofClass(classSet.classId(), reach.share()).stream()
                    .noneMatch(one -> one.taskId() == exercise.get().id())) {
                ClassSet made = classSets.addFor(
                        classSet.classId(),
                        exercise.get().task().title() + ", " + classSet.className(),
                        exercise.get());
                reach.own(Kind.CLASS_SET, made.id());
            }
            redirect.addFlashAttribute(
                    "done", "The exercise is made: a version of the task and a class set for its sheets.");
        }
        return "redirect:/class-sets/" + id + "/teach-again#group-" + part;
    }

    private KeptTask keep(DrawingTask exercise) {
        KeptTask kept = tasks.add(exercise);
        reach.own(Kind.TASK, kept.id());
        return kept;
    }

    /** The sheets of a group's exercise, each with its learner's name and code, the brief and what to look at. */
    @GetMapping("/class-sets/{id}/teach-again/{part}/sheets.pdf")
    ResponseEntity<byte[]> printed(@PathVariable long id, @PathVariable String part) {
        ClassSet classSet = found(id);
        FollowUpGroup group = group(id, part);
        DrawingTask exercise = exercise(classSet, part)
                .map(KeptTask::task)
                .orElseThrow(() -> new NotFound("The exercise for this group is not made yet."));
        byte[] pdf = DrawingSheets.of(exercise)
                .withBrief(true)
                .withNotes(List.of("Look at this time: " + missedBy(group) + "."))
                .pdf(owners(group, classSet));
        return ResponseEntity.ok().contentType(MediaType.APPLICATION_PDF).body(pdf);
    }

    private static String missedBy(FollowUpGroup group) {
        return group.members().stream()
                .flatMap(member -> member.missed().stream())
                .sorted(Comparator.comparingInt(MarkEntry::position))
                .map(mark -> Character.toLowerCase(mark.title().charAt(0)) + mark.title().substring(1))
                .distinct()
                .collect(Collectors.joining(", "));
    }

    /** Learners by name; a blank sheet for each sheet of the group that is nobody's yet. */
    private static List<SheetOwner> owners(FollowUpGroup group, ClassSet classSet) {
        Stream<SheetOwner> named = group.members().stream()
                .flatMap(member -> member.sheet().learner().stream())
                .map(learner -> new SheetOwner(learner.sheetCode(), learner.name(), classSet.className(), "", 1));
        long nobody = group.members().stream()
                .filter(member -> member.sheet().learner().isEmpty())
                .count();
        return Stream.concat(
                        named,
                        IntStream.rangeClosed(1, (int) nobody).mapToObj(SheetOwner::anybody))
                .toList();
    }

    private FollowUpGroup group(long id, String part) {
        return FollowUpGroup.of(sheets.of(id), sheets.marksOfSet(id)).stream()
                .filter(group -> group.part().equals(part))
                .findFirst()
                .orElseThrow(() -> new NotFound("There is no such group any more: the marks have changed."));
    }

    private ClassSet found(long id) {
        return classSets.find(id).orElseThrow(() -> new NotFound("There is no class set " + id + "."));
    }
}
