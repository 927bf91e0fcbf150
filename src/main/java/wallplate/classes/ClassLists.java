package wallplate.classes;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import wallplate.audit.AuditedEvent;
import wallplate.tables.Cell;
import wallplate.tables.LineFault;
import wallplate.tables.Table;
import wallplate.tables.TableFile;

/**
 * Takes class lists in and hands them out.
 *
 * <p>A learner of the list is one of the class by candidate number, or where the list gives none by name. Whom the list
 * does not name stays in the class: taking in a list never ends an enrolment.
 */
@Service
public class ClassLists {

    private final Classes classes;
    private final ApplicationEventPublisher events;

    ClassLists(Classes classes, ApplicationEventPublisher events) {
        this.classes = classes;
        this.events = events;
    }

    /** Takes a whole list in, or nothing of it where one line is wrong. */
    @Transactional
    public RollChange take(SchoolClass schoolClass, byte[] file) {
        ClassRoll roll = ClassRoll.of(TableFile.read(file), schoolClass.numbersShown());
        if (roll instanceof ClassRoll.Refused refused) {
            return new RollChange.Refused(refused.faults());
        }
        ClassRoll.Accepted accepted = (ClassRoll.Accepted) roll;
        List<Enrolment> present = present(schoolClass.id());
        Known known = new Known(present);
        List<ListedLearner> fresh = new ArrayList<>();
        Map<ListedLearner, Enrolment> matched = new java.util.LinkedHashMap<>();
        List<LineFault> faults = new ArrayList<>();
        for (ListedLearner listed : accepted.learners()) {
            Enrolment enrolment = known.of(listed);
            if (enrolment == null) {
                fresh.add(listed);
            } else if (!matched.containsValue(enrolment)) {
                matched.put(listed, enrolment);
            } else {
                faults.add(new LineFault(
                        listed.line(), "\"" + listed.name() + "\" is a learner whom another line names already."));
            }
        }
        if (!faults.isEmpty()) {
            return new RollChange.Refused(faults);
        }
        return carryOut(schoolClass, present, fresh, matched, accepted.unused());
    }

    private RollChange carryOut(
            SchoolClass schoolClass,
            List<Enrolment> present,
            List<ListedLearner> fresh,
            Map<ListedLearner, Enrolment> matched,
            List<String> unused) {
        int changed = 0;
        for (Map.Entry<ListedLearner, Enrolment> pair : matched.entrySet()) {
            ListedLearner listed = pair.getKey();
            Enrolment enrolment = pair.getValue();
            String number =
                    listed.candidateNumber().isEmpty() ? enrolment.candidateNumber() : listed.candidateNumber();
            if (!listed.name().equals(enrolment.name()) || !number.equals(enrolment.candidateNumber())) {
                classes.rename(enrolment.id(), listed.name(), number);
                changed++;
            }
        }
        classes.enrol(schoolClass.id(), fresh);
        events.publishEvent(new AuditedEvent(
                "list-taken %d %d %d".formatted(fresh.size(), changed, matched.size() - changed),
                "/classes/" + schoolClass.id()));
        Set<Enrolment> unnamed = new LinkedHashSet<>(present);
        unnamed.removeAll(matched.values());
        List<String> notListed = unnamed.stream().map(Enrolment::name).toList();
        return new RollChange.Done(fresh.size(), changed, matched.size() - changed, notListed, unused);
    }

    /** Learners of a class by what a list may say of them. */
    private static final class Known {

        private final Map<String, Enrolment> byNumber = new HashMap<>();
        private final Map<String, Enrolment> byName = new HashMap<>();

        Known(List<Enrolment> present) {
            for (Enrolment enrolment : present) {
                byNumber.put(key(enrolment.candidateNumber()), enrolment);
                byName.put(key(enrolment.name()), enrolment);
            }
            byNumber.remove("");
        }

        @Nullable Enrolment of(ListedLearner listed) {
            Enrolment numbered = byNumber.get(key(listed.candidateNumber()));
            if (numbered != null) {
                return numbered;
            }
            Enrolment named = byName.get(key(listed.name()));
            boolean other = named != null && !listed.candidateNumber().isEmpty() && !named.candidateNumber().isEmpty();
            return other ? null : named;
        }

        private static String key(String text) {
            return text.toLowerCase(Locale.ROOT);
        }
    }

    /** Moves learners who are in a class to another one; returns what hinders it, and then moves nobody. */
    @Transactional
    public List<String> move(Set<Long> enrolmentIds, SchoolClass from, SchoolClass to) {
        List<Enrolment> moving = present(from.id()).stream()
                .filter(enrolment -> enrolmentIds.contains(enrolment.id()))
                .toList();
        List<String> hindrances = new ArrayList<>();
        Set<Long> there = new LinkedHashSet<>();
        Map<String, String> numbers = new HashMap<>();
        for (Enrolment enrolment : present(to.id())) {
            there.add(enrolment.person());
            numbers.put(enrolment.candidateNumber().toLowerCase(Locale.ROOT), enrolment.name());
        }
        numbers.remove("");
        for (Enrolment enrolment : moving) {
            String number = enrolment.candidateNumber().toLowerCase(Locale.ROOT);
            if (there.contains(enrolment.person())) {
                hindrances.add(enrolment.name() + " is in " + to.name() + " already.");
            } else if (to.numbersShown() && number.isEmpty()) {
                hindrances.add(enrolment.name() + " has no candidate number; " + to.name() + " goes by them.");
            } else if (numbers.containsKey(number)) {
                hindrances.add("The candidate number " + enrolment.candidateNumber() + " of " + enrolment.name()
                        + " belongs to " + numbers.get(number) + " in " + to.name() + ".");
            }
        }
        if (hindrances.isEmpty()) {
            classes.move(moving, to.id());
            moving.forEach(enrolment -> events.publishEvent(
                    new AuditedEvent("learner-moved " + from.id() + " " + to.id(), "/learners/" + enrolment.id())));
        }
        return hindrances;
    }

    /** Has a class go by candidate numbers or by names; returns who lacks a number, and then changes nothing. */
    @Transactional
    public List<Enrolment> showNumbers(SchoolClass schoolClass, boolean shown) {
        // Who has left is counted too: the sheets of that time are still shown.
        List<Enrolment> without = classes.enrolments(schoolClass.id()).stream()
                .filter(enrolment -> enrolment.candidateNumber().isEmpty())
                .toList();
        if (shown && !without.isEmpty()) {
            return without;
        }
        classes.showNumbers(schoolClass.id(), shown);
        return List.of();
    }

    /** Who is in a class now. */
    public List<Enrolment> present(long classId) {
        return classes.enrolments(classId).stream()
                .filter(enrolment -> enrolment.leftAt().isEmpty())
                .toList();
    }

    /** The list of a class as it can be taken in again. */
    public Table list(SchoolClass schoolClass) {
        return new Table(
                schoolClass.name(),
                List.of("name", "number"),
                present(schoolClass.id()).stream()
                        .map(enrolment ->
                                List.of(Cell.of(enrolment.name()), Cell.of(enrolment.candidateNumber())))
                        .toList());
    }
}
