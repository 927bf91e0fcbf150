package wallplate.task;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TaskFileTest {

    @Test
    void readsTheExampleOfTheInterchangePage() {
        DrawingTask task = Tasks.accepted(Tasks.BOATHOUSE + """
            marking:                 # optional
              tolerance: {length: 1.0, thickness: 0.5, angle: 1.0}
            """);
        assertThat(task.id()).isEqualTo("boathouse-eaves");
        assertThat(task.scale()).isEqualTo(new Scale(20));
        assertThat(task.eaves()).isEqualTo(EavesSide.RIGHT);
        assertThat(task.sizes().number("ceiling.brander.spacing")).isEqualTo(400);
        assertThat(task.sizes().word("wall.plate-flush")).hasValue("inner");
        assertThat(task.sheet()).isEqualTo(new SheetFormat("A4", 297, 210, 100));
        assertThat(task.marking()).containsKey("tolerance");
    }

    @Test
    void readsEveryTaskOfTheTestSheetsAndWritesItWithoutLoss() throws IOException {
        Path sheets = Path.of("../shared/scans/dev");
        Assumptions.assumeTrue(Files.isDirectory(sheets), "no test sheets at " + sheets + ": this check is left out");
        try (Stream<Path> files = Files.walk(sheets)) {
            List<Path> tasks = files.filter(file -> file.endsWith("task.yml")).toList();
            assertThat(tasks).isNotEmpty();
            for (Path file : tasks) {
                DrawingTask task = Tasks.accepted(Files.readString(file));
                assertThat(Tasks.accepted(TaskFile.write(task))).isEqualTo(task);
            }
        }
    }

    @Test
    void writesWhatItReadsBackAsTheSameTask() {
        DrawingTask task = Tasks.accepted(Tasks.BOATHOUSE
                        .replace("the boathouse", "\"Boat: house\" # 1 – ü 'yes'")
                        .replace("title: ", "title: >-\n  ")
                        .replace("pitch: 26", "pitch: 22.5")
                + """
                marking:
                  tolerance: {length: 1.5, angle: 1}
                  criteria:
                    - {id: roof-pitch, note: "true", teacher: true, marks: 2, text: "1:20", empty: ""}
                """);
        String written = TaskFile.write(task);
        assertThat(Tasks.accepted(written)).isEqualTo(task);
        assertThat(TaskFile.write(Tasks.accepted(written))).isEqualTo(written);
        assertThat(written).contains("pitch: 22.5").contains("thickness: 230\n").contains("scale: '1:20'");
    }

    @ParameterizedTest
    @ValueSource(strings = {"1:1", "1:2.5", "1:20", "1:60", "1:100", "1:1000"})
    void writesEveryScaleSoThatItIsReadBack(String scale) {
        DrawingTask task = Tasks.boathouse("\"1:20\"", "\"" + scale + "\"");
        assertThat(task.scale()).hasToString(scale);
        assertThat(Tasks.accepted(TaskFile.write(task))).isEqualTo(task);
    }

    @Test
    void readsFilesOfOtherSystems() {
        DrawingTask task = Tasks.boathouse();
        assertThat(Tasks.accepted("\uFEFF" + Tasks.BOATHOUSE.replace("\n", "\r\n"))).isEqualTo(task);
    }

    @Test
    void leavesOutPartsThatAreNotThere() {
        DrawingTask task = Tasks.accepted(Stream.of("posts", "barge-board", "gutter", "fascia", "ceiling", "tie-beam")
                .reduce(Tasks.BOATHOUSE, (yaml, part) -> yaml.replaceAll("(?m)^" + part + ":.*\n", "")));
        assertThat(task.sizes().has("posts")).isFalse();
        assertThat(Tasks.accepted(TaskFile.write(task))).isEqualTo(task);
    }

    @Test
    void explainsQuotingWhereTheScaleIsUnquoted() {
        assertThat(faults("scale: \"1:20\"", "scale: 1:20"))
                .containsExactly("scale: found 1:20 without quotes, which YAML 1.1 reads as the number 80;"
                        + " accepted: the same in quotes: \"1:20\"");
    }

    @ParameterizedTest
    @ValueSource(strings = {"\"20\"", "\"20:1\"", "\"1:0\"", "\"1:-20\"", "\"1:2000\"", "80", "[1, 20]", "{a: 1}", "~"})
    void refusesOtherScales(String scale) {
        assertThat(faults("scale: \"1:20\"", "scale: " + scale))
                .singleElement()
                .asString()
                .startsWith("scale: ");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "pitch: 26 | pitch: 0 | pitch: found 0; accepted: a plain number of degrees from 1 to 89",
                "pitch: 26 | pitch: 90 | pitch: found 90; accepted: a plain number of degrees from 1 to 89",
                "pitch: 26 | pitch: 26 deg | pitch: found 26 deg; accepted: a plain number of degrees from 1 to 89;"
                        + " leave the unit away",
                "pitch: 26 | pitch: 22,5 | pitch: found 22,5; accepted: a plain number of degrees from 1 to 89; write"
                        + " the fraction with a point",
                "pitch: 26 | pitch: .nan | pitch: found .nan; accepted: a plain number of degrees from 1 to 89",
                "thickness: 230 | thickness: 230 mm | wall.thickness: found 230 mm; accepted: a plain number of real"
                        + " millimetres from 50 to 1500; leave the unit away",
                "thickness: 230 | thickness: 0.23 | wall.thickness: found 0.23; accepted: a plain number of real"
                        + " millimetres from 50 to 1500; this looks like metres",
                "thickness: 230 | thickness: 0230 | wall.thickness: found 0230; accepted: a plain number of real"
                        + " millimetres from 50 to 1500",
                "width: 100, depth: 50 | width: 240, depth: 50 | wall-plate.width: found 240; accepted: at most the"
                        + " wall's thickness, which is 230",
                "overhang: 400 | overhang: -400 | rafter.overhang: found -400; accepted: a plain number of real"
                        + " millimetres from 0 to 3000",
                "inside: 2400 | inside: 200 | break-line.inside: found 200; accepted: more than the wall's thickness,"
                        + " which is 230",
                "spacing: 900 | spacing: 50 | support.spacing: found 50; accepted: more than the width of one support,"
                        + " which is 50",
                "equal-spaces: 4 | equal-spaces: 4.5 | posts.equal-spaces: found 4.5; accepted: a whole number from 2"
                        + " to 40",
                "plate-flush: inner | plate-flush: inside | wall.plate-flush: found inside; accepted: one of inner,"
                        + " outer, centre",
                "eaves: right | eaves: Right | eaves: found Right; accepted: one of left, right",
                "detail: eaves-section | detail: eaves | detail: found eaves; accepted: one of",
                "id: boathouse-eaves | id: Boat House | id: found Boat House; accepted: lower case words",
                "size: A4 | size: A5 | sheet.size: found A5; accepted: one of A0, A1, A2, A3, A4",
                "reference-bar: 100 | reference-bar: 290 | sheet.reference-bar: found 290; accepted: a length in"
                        + " millimetres on paper from 20 to 257",
                "wall: {thickness: 230, plate-flush: inner} | wall: 230 | wall: found 230; accepted: a group of the"
                        + " keys thickness, plate-flush",
                "tie-beam: {depth: 150} | tie-beam: {} | tie-beam.depth: is missing; accepted: a plain number of real"
                        + " millimetres from 20 to 800",
                "tie-beam: {depth: 150} | tie-beams: {depth: 150} | tie-beams: found a key that is not known here;"
                        + " accepted: only id, title",
                "rafter: {depth: 150, overhang: 400} | rafter: {depth: 150, overhand: 400} | rafter.overhand: found a"
                        + " key that is not known here; accepted: only depth, overhang; perhaps overhang is meant",
                "title: Section through the eaves of the boathouse | title: | title: is missing; accepted: what stands"
                        + " over",
            })
    void namesTheKeyTheValueAndWhatIsAccepted(String replace, String by, String message) {
        assertThat(faults(replace, by)).anySatisfy(fault -> assertThat(fault).startsWith(message));
    }

    @Test
    void namesAllFaultsAtOnce() {
        String yaml = Tasks.BOATHOUSE
                .replace("scale: \"1:20\"", "scale: 1:20")
                .replace("pitch: 26", "pitch: 90")
                .replace("overhang: 400", "overhang: -5")
                .replace("width: 100, depth: 50", "width: 900, depth: 50")
                .replace("title: ", "titel: ");
        assertThat(Tasks.messages(TaskFile.read(yaml)))
                .extracting(message -> message.split(":")[0])
                .containsExactlyInAnyOrder("titel", "title", "scale", "pitch", "rafter.overhang", "wall-plate.width");
    }

    @Test
    void namesKeysThatStandTwice() {
        assertThat(faults("eaves: right", "eaves: right\neaves: left"))
                .containsExactly("eaves: found the key a second time in line 6; accepted: every key once");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "   ",
                "just text",
                "- a\n- b",
                "a: [1, 2",
                "a: 'open",
                "\tid: x",
                "id: x\n---\nid: y",
                "? [a, b]\n: c",
                "id: !!javax.script.ScriptEngineManager [!!java.net.URL [\"file:///x\"]]",
                "a: &a [x,x]\nb: &b [*a,*a]\nc: [*b,*b]",
                "a: &a {b: *a}",
                "<<: {id: x}",
                "\u0000",
                "id: \uD83D\uDE00"
            })
    void answersHostileAndBrokenTextWithFaults(String yaml) {
        TaskReading reading = TaskFile.read(yaml);
        assertThat(reading).isInstanceOf(TaskReading.Refused.class);
        assertThat(((TaskReading.Refused) reading).faults()).isNotEmpty();
    }

    @Test
    void refusesTextThatIsTooLongOrTooDeep() {
        assertThat(Tasks.messages(TaskFile.read("a: " + "x".repeat(200_000))))
                .singleElement()
                .asString()
                .contains("200003 characters");
        assertThat(Tasks.messages(TaskFile.read("a: " + "[".repeat(5000))))
                .singleElement()
                .asString()
                .startsWith("task file:");
    }

    @Test
    void saysWhereMalformedTextIsBroken() {
        assertThat(faults("wall: {thickness: 230", "wall: {thickness: 230: 5"))
                .singleElement()
                .asString()
                .contains("line 7");
    }

    @Test
    void checksTheTolerancesOfTheGuideline() {
        String yaml = Tasks.BOATHOUSE + "marking: {tolerance: {length: 0, lenght: 1, angle: wide}}\n";
        assertThat(Tasks.messages(TaskFile.read(yaml)))
                .extracting(message -> message.split(":")[0])
                .containsExactlyInAnyOrder(
                        "marking.tolerance.length", "marking.tolerance.lenght", "marking.tolerance.angle");
    }

    @Test
    void readsTheSameTaskFromFormFields() {
        DrawingTask task = Tasks.boathouse();
        Map<String, String> fields = new LinkedHashMap<>();
        task.sizes()
                .asMap()
                .forEach((key, value) ->
                        fields.put(key, value instanceof Double number ? PlainNumber.text(number) : (String) value));
        fields.putAll(Map.of(
                "id",
                task.id(),
                "title",
                task.title(),
                "detail",
                task.detail(),
                "scale",
                "1:20",
                "eaves",
                "right",
                "sheet.size",
                "A4",
                "sheet.orientation",
                "landscape",
                "sheet.reference-bar",
                "100"));
        assertThat(TaskFile.read(fields, Map.of())).isEqualTo(new TaskReading.Accepted(task));
        fields.put("pitch", " ");
        assertThat(Tasks.messages(TaskFile.read(fields, Map.of())))
                .singleElement()
                .asString()
                .startsWith("pitch: is missing");
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void answersDamagedFilesWithoutThrowing(long seed) {
        java.util.Random random = new java.util.Random(seed);
        String alphabet = " \t\n:-,{}[]&*!|>'\"%@`#?~.0123456789abcdefxyz\u0000\u00e9\ud83d";
        for (int trial = 0; trial < 250; trial++) {
            StringBuilder damaged = new StringBuilder(Tasks.BOATHOUSE);
            for (int i = 0; i <= random.nextInt(6); i++) {
                int place = random.nextInt(damaged.length());
                char letter = alphabet.charAt(random.nextInt(alphabet.length()));
                switch (random.nextInt(3)) {
                    case 0 -> damaged.setCharAt(place, letter);
                    case 1 -> damaged.insert(place, letter);
                    default -> damaged.delete(place, Math.min(damaged.length(), place + 1 + random.nextInt(30)));
                }
            }
            TaskReading reading = TaskFile.read(damaged.toString());
            if (reading instanceof TaskReading.Accepted accepted) {
                assertThat(Tasks.accepted(TaskFile.write(accepted.task()))).isEqualTo(accepted.task());
            } else {
                assertThat(((TaskReading.Refused) reading).faults())
                        .isNotEmpty()
                        .allSatisfy(fault ->
                                assertThat(fault.message()).isNotBlank().hasSizeLessThan(1000));
            }
        }
    }

    private static List<String> faults(String replace, String by) {
        return Tasks.messages(TaskFile.read(Tasks.changed(replace, by)));
    }
}
