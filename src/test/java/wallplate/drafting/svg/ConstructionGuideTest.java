package wallplate.drafting.svg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import wallplate.drafting.ConstructionGuide;
import wallplate.drafting.DraftingTasks;
import wallplate.drafting.GuideStep;
import wallplate.solver.ConstructionStep;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;
import wallplate.task.Tasks;

class ConstructionGuideTest {

    static List<DrawingTask> tasks() {
        List<DrawingTask> tasks = new java.util.ArrayList<>(
                DraftingTasks.ALL.stream().map(Tasks::accepted).toList());
        tasks.add(Tasks.accepted(Tasks.LEAN_TO));
        return tasks;
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void textsAreThoseOfTheSolversSteps(DrawingTask task) {
        List<ConstructionStep> solved = Solver.construction(task);
        List<GuideStep> shown = ConstructionGuide.of(task).steps();
        assertThat(shown).hasSameSizeAs(solved);
        for (int index = 0; index < shown.size(); index++) {
            assertThat(shown.get(index).number()).isEqualTo(index + 1);
            assertThat(shown.get(index).title()).isEqualTo(solved.get(index).title());
            assertThat(shown.get(index).calculation()).isEqualTo(solved.get(index).calculation());
            assertThat(shown.get(index).instruction()).isEqualTo(solved.get(index).instruction());
        }
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void thisStepsLinesAreFullAndEarlierOnesLight(DrawingTask task) {
        List<ConstructionStep> solved = Solver.construction(task);
        List<GuideStep> shown = ConstructionGuide.of(task).steps();
        for (int index = 0; index < shown.size(); index++) {
            ParsedSvg svg = ParsedSvg.of(shown.get(index).svg());
            Set<String> full = outlined(svg, false);
            Set<String> expected = solved.get(index).linedIn().stream()
                    .map(line -> line.part())
                    .collect(Collectors.toCollection(TreeSet::new));
            assertThat(full).as("step %d", index + 1).isEqualTo(expected);
            Set<String> earlier = solved.subList(0, index).stream()
                    .flatMap(step -> step.linedIn().stream())
                    .map(line -> line.part())
                    .collect(Collectors.toCollection(TreeSet::new));
            // An enlarged step shows only what lies in its window.
            assertThat(earlier).containsAll(outlined(svg, true));
        }
    }

    /** The parts with lines of the drawing in them, light or in full weight. */
    private static Set<String> outlined(ParsedSvg svg, boolean light) {
        Set<String> parts = new TreeSet<>();
        for (String kind : List.of("cut-outline", "seen-outline", "break", "hatch", "diagonal")) {
            for (Element group : svg.groups(kind)) {
                if (group.getAttribute("class").contains("light") == light) {
                    parts.add(((Element) group.getParentNode()).getAttribute("data-part"));
                }
            }
        }
        return parts;
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void everyPictureStaysInItsFrame(DrawingTask task) {
        for (GuideStep step : ConstructionGuide.of(task).steps()) {
            ParsedSvg svg = ParsedSvg.of(step.svg());
            String[] box = svg.root().getAttribute("viewBox").split(" ");
            for (Element path : svg.all("path")) {
                String[] numbers = path.getAttribute("d").replaceAll("[MLZ]", " ").trim().split("\\s+");
                for (int at = 0; at < numbers.length; at += 2) {
                    assertThat(Double.parseDouble(numbers[at]))
                            .as("x in step %d", step.number())
                            .isBetween(0.0, Double.parseDouble(box[2]));
                    assertThat(Double.parseDouble(numbers[at + 1]))
                            .as("y in step %d", step.number())
                            .isBetween(0.0, Double.parseDouble(box[3]));
                }
            }
        }
    }

    @Test
    void measuresAreShownAsTheInstructionSaysThem() {
        // Common practice, no source: at 1:20, 150 (7.5) is drawn 8 and 400 is drawn 20
        GuideStep rafter = ConstructionGuide.of(Tasks.boathouse()).steps().stream()
                .filter(step -> step.title().equals("Draw the rafter"))
                .findFirst()
                .orElseThrow();
        assertThat(ParsedSvg.of(rafter.svg()).all("text"))
                .extracting(Element::getTextContent)
                .containsExactlyInAnyOrder("8", "20");
    }
}
