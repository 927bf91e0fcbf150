package wallplate.marking;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.Fault;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** A marking guideline as a task file has it. */
class GuidelineReaderTest {

    private static final String WHOLE =
            """
            name: 2026-2
            tolerance: {length: 1.5, thickness: 0.7, angle: 2}
            borderline: 1
            groups:
              supports: {title: Purlins, maximum: 2.5}
            criteria:
              - measure: roof.pitch
                title: The slope of the roof
                marks: 2
                tolerance: 1 degree
                part-marks: [{within: 3, marks: 1}]
              - measure: rafter.overhang
                tolerance: 20 mm real
                consistent-working: false
              - {measure: support.spacing, marks: 1.5, tolerance: 5 %, group: supports, needs: {key: support.count, at-least: 2}}
              - {measure: support.count, tolerance: 1, group: supports}
              - id: crossings
                measure: [wall-plate.crossed, support.crossed, brander.crossed]
                marks: 3
                part-marks: [{at-least: 1, marks: 1}, {at-least: 2, marks: 2}]
              - {id: gutter-there, part: gutter}
              - {id: outlines, lines: outline-breadth, accepted: {from: 0.35, to: 0.7}, part-marks: [{within: 0.1, marks: 0.5}]}
              - {id: line-work, marks: 3, teacher: "Are outlines dark and construction lines faint?"}
            """;

    @Test
    void readsEverythingThatAGuidelineCanSay() {
        Guideline guideline = accepted(WHOLE);
        assertThat(guideline.name()).isEqualTo("2026-2");
        assertThat(guideline.tolerances()).isEqualTo(new Tolerances(1.5, 0.7, 2));
        assertThat(guideline.borderlineDeviations()).isEqualTo(1);
        assertThat(guideline.groups()).containsExactly(new MarkGroup("supports", "Purlins", 2.5));
        assertThat(guideline.criteria())
                .extracting(Criterion::id)
                .containsExactly(
                        "roof-pitch",
                        "rafter-overhang",
                        "support-spacing",
                        "support-count",
                        "crossings",
                        "gutter-there",
                        "outlines",
                        "line-work");
        Criterion pitch = guideline.criteria().get(0);
        assertThat(pitch.title()).contains("The slope of the roof");
        assertThat(pitch.tolerance()).contains(Tolerance.degrees(1));
        assertThat(pitch.partMarks()).containsExactly(new Band(3, 1));
        Criterion overhang = guideline.criteria().get(1);
        assertThat(overhang.tolerance()).contains(new Tolerance(20, Tolerance.Unit.REAL_MM));
        assertThat(overhang.consistentWorking()).isFalse();
        Criterion spacing = guideline.criteria().get(2);
        assertThat(spacing.tolerance()).contains(new Tolerance(5, Tolerance.Unit.PERCENT));
        assertThat(spacing.precondition()).contains(new Precondition("support.count", 2));
        assertThat(guideline.criteria().get(3).tolerance()).contains(new Tolerance(1, Tolerance.Unit.THINGS));
        assertThat(guideline.criteria().get(6).subject())
                .isEqualTo(new Subject.Lines(LineAspect.OUTLINE_BREADTH, new LineRange(0.35, 0.7)));
        assertThat(guideline.criteria().get(7).subject())
                .isEqualTo(new Subject.TeachersJudgement("Are outlines dark and construction lines faint?"));
    }

    @ParameterizedTest
    @ValueSource(strings = {WHOLE, "", "name: \"2026\"\nconsistent-working: false"})
    void writesWhatItReadsBackTheSame(String marking) {
        Guideline guideline = accepted(marking);
        String text = TaskFile.writeMarking(guideline.asMap());
        GuidelineReading again = Guideline.read(expected(""), TaskFile.readMarking(text));
        assertThat(again).isEqualTo(new GuidelineReading.Accepted(guideline));
        assertThat(((GuidelineReading.Accepted) again).guideline().version()).isEqualTo(guideline.version());
    }

    @Test
    void callsCriteriaOfAFaultyGroupNotFaulty() {
        String faulty = WHOLE.replace("maximum: 2.5", "maximum: 2.3");
        assertThat(refused(faulty)).extracting(Fault::key).containsExactly("marking.groups.supports.maximum");
    }

    @Test
    void marksEveryKeyWhereNoCriteriaAreStated() {
        Guideline guideline = accepted("tolerance: {length: 2}");
        assertThat(guideline.criteria()).hasSize(expected("").values().size());
        assertThat(guideline.tolerances()).isEqualTo(new Tolerances(2, 0.5, 1));
    }

    @Test
    void hasAnotherVersionWhereAnythingDiffers() {
        String version = accepted(WHOLE).version();
        assertThat(accepted(WHOLE).version()).isEqualTo(version).startsWith("2026-2-");
        assertThat(accepted(WHOLE.replace("maximum: 2.5", "maximum: 2")).version())
                .isNotEqualTo(version);
        assertThat(accepted(WHOLE.replace("20 mm real", "21 mm real")).version())
                .isNotEqualTo(version);
        assertThat(accepted(WHOLE.replace("Are outlines", "Are the outlines")).version())
                .isNotEqualTo(version);
    }

    @Test
    void namesEveryFaultAtOnce() {
        List<Fault> faults = refused(
                """
                nmae: typing error
                criteria:
                  - {measure: roof.slope}
                  - {measure: roof.pitch, tolerance: 2 mm}
                  - {measure: roof.pitch, marks: 0.3}
                  - {id: both, measure: roof.pitch, teacher: look}
                  - {measure: rafter.overhang, group: none}
                """);
        assertThat(faults)
                .extracting(Fault::key)
                .containsExactly(
                        "marking.nmae",
                        "marking.criteria[1].measure",
                        "marking.criteria[2].tolerance",
                        "marking.criteria[3].marks",
                        "marking.criteria[4].measure",
                        "marking.criteria[5].group");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{measure: rafter.heel-offset, tolerance: 5 %}          | tolerance | percent of nothing is nothing",
                "{measure: wall-plate.crossed, tolerance: 1 mm}         | tolerance | a yes or no has no tolerance",
                "{measure: roof.pitch, tolerance: -1 degrees}           | tolerance | no tolerance is negative",
                "{measure: roof.pitch, part-marks: [{within: 0.5, marks: 0.5}]} | within | part marks begin outside"
                        + " the tolerance",
                "{measure: roof.pitch, part-marks: [{within: 2, marks: 1}]}     | marks | part marks are fewer than"
                        + " full marks",
                "{measure: wall-plate.crossed, part-marks: [{within: 2, marks: 0.5}]} | part-marks | a yes or no has"
                        + " no bands",
                "{id: Bad Id, measure: roof.pitch}                      | id | an id has no capitals and spaces",
                "{teacher: look}                                        | id | what has no key needs an id",
                "{id: a, part: chimney}                                 | part | not a part of the task",
                "{id: a, measure: [roof.pitch]}                         | measure | one key is no list",
                "{measure: roof.pitch, needs: {key: roof.pitch}}        | key | a precondition is a count",
                "{measure: roof.pitch, consistent-working: maybe}       | consistent-working | yes or no",
            })
    void refusesACriterion(String criterion, String key, String why) {
        List<Fault> faults = refused("criteria:\n  - " + criterion + "\n");
        assertThat(faults).as(why).hasSize(1);
        assertThat(faults.get(0).key()).endsWith("." + key);
        assertThat(faults.get(0).accepted()).isNotBlank();
    }

    @Test
    void refusesTwoCriteriaWithOneId() {
        assertThat(refused("criteria: [{measure: roof.pitch}, {measure: roof.pitch}]"))
                .hasSize(1);
    }

    private static Guideline accepted(String marking) {
        return ((GuidelineReading.Accepted) Guideline.read(expected(marking))).guideline();
    }

    private static List<Fault> refused(String marking) {
        return ((GuidelineReading.Refused) Guideline.read(expected(marking))).faults();
    }

    /** The boathouse with a guideline, read from a whole task file as a teacher would write it. */
    private static ExpectedDrawing expected(String marking) {
        String task = TaskFile.write(Asked.boathouse());
        String whole = marking.isEmpty() ? task : task + "marking:\n" + marking.indent(2);
        TaskReading reading = TaskFile.read(whole);
        assertThat(reading).as("%s", reading).isInstanceOf(TaskReading.Accepted.class);
        return Solver.solve(((TaskReading.Accepted) reading).task());
    }
}
