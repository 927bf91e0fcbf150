package wallplate.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
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
                "scale: \"1:20\" | scale: \"1:25\" | scale | ISO 5455",
                "scale: \"1:20\" | scale: \"1:10\" | sheet.size | ISO 5457",
                "fascia: {thickness: 25 | fascia: {thickness: 12 | fascia.thickness | ISO 128",
                "depth: 225 | depth: 60 | fascia.depth | covers none of its end",
                "inside: 2400 | inside: 700 | ceiling.brander.spacing | no spacing can be marked",
                "inside: 2400 | inside: 1400 | posts.equal-spaces | No post stands whole",
            })
    void namesWhatIsUnusualWithItsSource(String replace, String by, String key, String word) {
        assertThat(BriefCheck.check(Tasks.boathouse(replace, by))).anySatisfy(advice -> {
            assertThat(advice.key()).isEqualTo(key);
            assertThat(advice.message() + advice.source()).contains(word);
            assertThat(advice.source()).isNotBlank();
        });
    }

    @ParameterizedTest
    @CsvSource({
        "gutter, barge-board.clearance",
        "fascia, gutter",
        "tie-beam, ceiling",
        "tie-beam, posts",
    })
    void namesPartsThatMissTheirNeighbour(String missing, String key) {
        DrawingTask task = Tasks.accepted(Tasks.BOATHOUSE.replaceAll("(?m)^" + missing + ":.*\n", ""));
        assertThat(BriefCheck.check(task)).extracting(Advice::key).contains(key);
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
}
