package wallplate.drafting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import wallplate.task.DrawingTask;
import wallplate.task.Tasks;

/** The construction guide in its languages. */
class ConstructionGuideTest {

    /** Words that stand in any English sentence or calculation of a guide, and in no German one. */
    private static final Pattern ENGLISH =
            Pattern.compile("\\b(the|from|to|and|its|draw|Draw|drawn|of|width|depth|spacing|rise|about|run)\\b");

    private static final Pattern POINT_IN_NUMBER = Pattern.compile("\\d\\.\\d");

    static Stream<DrawingTask> tasks() {
        return Stream.concat(DraftingTasks.ALL.stream(), Stream.of(Tasks.LEAN_TO)).map(Tasks::accepted);
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void saysEverySentenceInGerman(DrawingTask task) {
        List<GuideStep> english = ConstructionGuide.of(task).steps();
        List<GuideStep> german = ConstructionGuide.of(task, Locale.GERMAN).steps();
        assertThat(german).hasSameSizeAs(english);
        Set<String> left = new TreeSet<>();
        german.forEach(step -> Stream.concat(
                        Stream.of(step.title(), step.instruction()), step.calculation().stream())
                .filter(text -> ENGLISH.matcher(text).find() || POINT_IN_NUMBER.matcher(text).find())
                .forEach(left::add));
        assertThat(left).isEmpty();
    }

    @Test
    void writesSizesAsTheLanguageDoes() {
        GuideStep plate = ConstructionGuide.of(Tasks.boathouse(), Locale.GERMAN).steps().stream()
                .filter(step -> step.part().equals("wall-plate"))
                .findFirst()
                .orElseThrow();
        assertThat(plate.title()).isEqualTo("Die Fußpfette zeichnen");
        assertThat(plate.calculation()).contains("Höhe: 50 / 20 = 2,5 mm, gezeichnet 3 mm");
        assertThat(plate.instruction()).startsWith("Miss vom Fußpunkt auf der waagerechten Linie 5 mm nach innen");
        assertThat(plate.svg()).contains("Schritt").contains("Fußpfette");
    }

    @Test
    void leavesEnglishAsTheSolverSaysIt() {
        assertThat(ConstructionGuide.of(Tasks.boathouse(), Locale.ENGLISH).steps())
                .isEqualTo(ConstructionGuide.of(Tasks.boathouse()).steps());
    }
}
