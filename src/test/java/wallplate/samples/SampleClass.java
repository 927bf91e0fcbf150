package wallplate.samples;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Writes the invented class of {@code sample-scans}: a task, a class list and twelve captured sheets.
 *
 * <pre>mvn -q test-compile dependency:build-classpath -Dmdep.outputFile=target/classpath.txt
 * java -cp "target/test-classes:target/classes:$(cat target/classpath.txt)" wallplate.samples.SampleClass sample-scans</pre>
 */
public final class SampleClass {

    private static final long SEED = 20_260;

    /** How a member of the class draws, slips and hands the sheet in. */
    private record Member(String name, String neatness, List<String> slips, HandIn handIn) {

        String file(int number) {
            return String.format(java.util.Locale.ROOT, "%02d-%s.jpg", number, name.toLowerCase(java.util.Locale.ROOT));
        }
    }

    private enum HandIn {
        /** Cropped to the paper on a flatbed. */
        SCAN,
        /** With the paper's edges against a dark lid. */
        SCAN_WITH_EDGES,
        /** The same, put in upside down. */
        UPSIDE_DOWN,
        /** On its side through a feeder that stretches it a little. */
        FEEDER,
        PHOTOGRAPH,
        /** Cropped on a flatbed, and the learner has forgotten the bar: nothing tells the scale. */
        WITHOUT_BAR
    }

    private static final List<Member> MEMBERS = List.of(
            new Member("Amara", "neat", List.of(), HandIn.SCAN),
            new Member("Bongani", "neat", List.of(), HandIn.SCAN_WITH_EDGES),
            new Member("Chiyo", "fair", List.of(), HandIn.SCAN),
            new Member("Dalia", "fair", List.of("overhang-along-slope"), HandIn.SCAN),
            new Member("Emre", "fair", List.of("pitch-ten-off"), HandIn.FEEDER),
            new Member("Freya", "neat", List.of("spacing-level"), HandIn.SCAN_WITH_EDGES),
            new Member("Gopal", "fair", List.of("depth-plumb", "not-crossed:brander"), HandIn.SCAN),
            new Member("Hinemoa", "fair", List.of("mirrored"), HandIn.SCAN),
            new Member("Itzel", "careless", List.of("missing:gutter", "off-the-heel"), HandIn.SCAN_WITH_EDGES),
            new Member("Jelena", "neat", List.of("spacing-clear"), HandIn.UPSIDE_DOWN),
            new Member("Kwame", "neat", List.of("width-depth-swapped:gutter"), HandIn.PHOTOGRAPH),
            new Member("Lerato", "fair", List.of(), HandIn.WITHOUT_BAR));

    private SampleClass() {}

    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments[0]);
        Files.createDirectories(folder);
        files().forEach((name, bytes) -> {
            try {
                Files.write(folder.resolve(name), bytes);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    /** Every file of the folder by name but its README. */
    static Map<String, byte[]> files() {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("task.yml", task().toYaml().getBytes(StandardCharsets.UTF_8));
        files.put("class-list.csv", classList().getBytes(StandardCharsets.UTF_8));
        for (int number = 1; number <= MEMBERS.size(); number++) {
            files.put(MEMBERS.get(number - 1).file(number), scan(number));
        }
        return files;
    }

    static SampleTask task() {
        Map<String, Object> sizes = new LinkedHashMap<>();
        sizes.put("pitch", 30);
        sizes.put("wall.thickness", 220);
        sizes.put("wall.plate-flush", "inner");
        sizes.put("wall-plate.width", 110);
        sizes.put("wall-plate.depth", 75);
        sizes.put("tie-beam.depth", 150);
        sizes.put("rafter.depth", 125);
        sizes.put("rafter.overhang", 450);
        sizes.put("support.name", "purlin");
        sizes.put("support.width", 50);
        sizes.put("support.depth", 75);
        sizes.put("support.spacing", 800);
        sizes.put("covering.name", "corrugated sheeting");
        sizes.put("covering.thickness", 40);
        sizes.put("covering.projection", 60);
        sizes.put("fascia.thickness", 32);
        sizes.put("fascia.depth", 225);
        sizes.put("gutter.width", 125);
        sizes.put("gutter.depth", 90);
        sizes.put("barge-board.depth", 275);
        sizes.put("barge-board.clearance", 30);
        sizes.put("ceiling.board", 9);
        sizes.put("ceiling.brander.width", 50);
        sizes.put("ceiling.brander.depth", 50);
        sizes.put("ceiling.brander.spacing", 450);
        sizes.put("posts.width", 100);
        sizes.put("posts.equal-spaces", 6);
        sizes.put("posts.span", 8400);
        sizes.put("posts.set-out-from", "wall-centre");
        sizes.put("break-line.inside", 2500);
        return new SampleTask(
                "bandstand-eaves", "Section through the eaves of the bandstand", 20, false, sizes, new Paper("A4", true), 100);
    }

    private static String classList() {
        StringBuilder list = new StringBuilder("number,learner,scan\n");
        for (int number = 1; number <= MEMBERS.size(); number++) {
            Member member = MEMBERS.get(number - 1);
            list.append(number).append(',').append(member.name()).append(',').append(member.file(number)).append('\n');
        }
        return list.toString();
    }

    /** The scan of the member with the given number, counted from one, as a JPEG file. */
    static byte[] scan(int number) {
        SampleSheet sheet = sheet(number);
        return PictureFile.jpeg(sheet.picture(), 0.72f, sheet.dpi());
    }

    /** The sheet of the member with the given number, with its truth. */
    static SampleSheet sheet(int number) {
        Member member = MEMBERS.get(number - 1);
        Chance chance = new Chance(SEED + number);
        Learner learner = Learner.draw(member.neatness(), chance);
        Intention intention = new Intention(task());
        SlipMaker slips = new SlipMaker(intention, chance.fork());
        member.slips().forEach(slips::make);
        intention.setOff(learner, chance.fork());
        boolean withBar = member.handIn() != HandIn.WITHOUT_BAR;
        SheetDrawing drawing = new SheetComposer(intention, learner, chance.fork()).compose(withBar);
        return new SampleSheet(intention, drawing, take(member.handIn(), drawing, chance), withBar ? "" : "no-bar");
    }

    private static Capture take(HandIn handIn, SheetDrawing sheet, Chance chance) {
        double turned = chance.error(0.7);
        FlatbedCapture flatbed = new FlatbedCapture(300, turned, 0, 0, false, 0, false, 0.98, 0.95, 0.045, 0, 1.6, false);
        return switch (handIn) {
            case SCAN -> flatbed.take(sheet, chance);
            case WITHOUT_BAR -> flatbed.trimmed().take(sheet, chance);
            case SCAN_WITH_EDGES -> edged(turned, 0).take(sheet, chance);
            case UPSIDE_DOWN -> edged(turned, 180).take(sheet, chance);
            case FEEDER -> new FlatbedCapture(200, turned, 90, 0.002, false, 0, false, 0.98, 0.93, 0.05, 0.3, 2, false).take(sheet, chance);
            case PHOTOGRAPH -> new PhoneCapture(4032, 3024, 3.5, -4, 1.6, 0.9, 0.002, 0.9, 1.8, 0.2, 0, 0.18).take(sheet, chance);
        };
    }

    private static FlatbedCapture edged(double turned, int turnDegrees) {
        return new FlatbedCapture(300, turned, turnDegrees, 0, true, 0, false, 0.1, 0.93, 0.045, 0, 1.6, false);
    }
}
