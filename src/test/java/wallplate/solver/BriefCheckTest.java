package wallplate.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wallplate.task.DrawingTask;
import wallplate.task.Tasks;

class BriefCheckTest {

    @Test
    void hasNothingToSayOfUsualBriefs() throws IOException {
        assertThat(BriefCheck.check(Tasks.boathouse())).isEmpty();
        for (TruthSheets.Sheet sheet : TruthSheets.readable()) {
            assertThat(BriefCheck.check(sheet.task())).as(sheet.task().id()).isEmpty();
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "name: corrugated sheeting | name: natural slates | pitch | 26.5",
                "pitch: 26 | pitch: 17 | | ",
                "scale: \"1:20\" | scale: \"1:25\" | scale | ISO 5455",
                "scale: \"1:20\" | scale: \"1:10\" | sheet.size | ISO 5457",
                "fascia: {thickness: 25 | fascia: {thickness: 12 | fascia.thickness | ISO 128",
                "gutter: {width: 125, depth: 100} | | gutter-less barge | ",
            })
    void namesWhatIsUnusualWithItsSource(String replace, String by, String key, String word) {
        List<Advice> advice = BriefCheck.check(changed(replace, by == null ? "" : by));
        if (key == null) {
            assertThat(advice).isEmpty();
        } else if (word == null) {
            assertThat(advice).extracting(Advice::key).containsExactly("barge-board.clearance");
        } else {
            assertThat(advice).anySatisfy(one -> {
                assertThat(one.key()).isEqualTo(key);
                assertThat(one.message() + one.source()).contains(word);
                assertThat(one.source()).isNotBlank();
            });
        }
    }

    @Test
    void asksForCloserBattensUnderFlatTilesThanUnderSteepOnes() {
        // Marley Roofing SA, Double Roman data sheet: at most 320 mm from 17.5 to 25 degrees, 345 mm from 26 degrees
        assertThat(BriefCheck.check(tiles(20, 320))).isEmpty();
        assertThat(BriefCheck.check(tiles(20, 330))).extracting(Advice::key).containsExactly("support.spacing");
        assertThat(BriefCheck.check(tiles(26, 345))).isEmpty();
        assertThat(BriefCheck.check(tiles(26, 350))).extracting(Advice::key).containsExactly("support.spacing");
        assertThat(BriefCheck.check(tiles(17.5, 320))).isEmpty();
        assertThat(BriefCheck.check(tiles(17, 320))).extracting(Advice::key).containsExactly("pitch");
    }

    @Test
    void comparesLongRaftersWithATableOfACode() {
        DrawingTask posts = Tasks.boathouse(
                "posts: {width: 100, equal-spaces: 4, span: 6400", "posts: {width: 100, equal-spaces: 2, span: 14000");
        assertThat(BriefCheck.check(posts)).anySatisfy(one -> {
            assertThat(one.key()).isEqualTo("rafter.depth");
            assertThat(one.message()).contains("4724 mm at this depth");
            assertThat(one.source()).contains("IBC 2018");
        });
    }

    private static DrawingTask tiles(double pitch, int spacing) {
        return Tasks.accepted(Tasks.BOATHOUSE
                .replace("pitch: 26", "pitch: " + pitch)
                .replace("spacing: 900", "spacing: " + spacing)
                .replace("corrugated sheeting", "concrete tiles"));
    }

    private static DrawingTask changed(String replace, String by) {
        return Tasks.accepted(Tasks.changed(replace, by).replaceAll("(?m)^\n", ""));
    }
}
