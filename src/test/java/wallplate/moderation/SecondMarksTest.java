package wallplate.moderation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SecondMarksTest {

    private static final List<BlindSheet.Criterion> CRITERIA = List.of(
            new BlindSheet.Criterion("pitch", "Pitch", 2, Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty()));

    @Test
    void takesMarksWithAPointOrAComma() {
        assertThat(read("1.5").marks()).containsEntry("pitch", 1.5);
        assertThat(read(" 1,5 ").marks()).containsEntry("pitch", 1.5);
        assertThat(read("0").isComplete()).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "-0.5", "2.5", "two", "NaN", "1.005", "1e309"})
    void saysWhatIsWrongWithAnyOther(String typed) {
        SecondMarks second = read(typed);

        assertThat(second.isComplete()).isFalse();
        assertThat(second.faults().get("pitch")).contains("0 to 2");
    }

    @Test
    void wantsAMarkForEveryCriterion() {
        assertThat(SecondMarks.read(CRITERIA, Map.of()).faults()).containsKey("pitch");
    }

    private static SecondMarks read(String typed) {
        return SecondMarks.read(CRITERIA, Map.of("pitch", typed));
    }
}
