package wallplate.samples;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import wallplate.samples.Learner.Straying;
import wallplate.samples.pdf.ScannedDocument;
import wallplate.samples.pdf.ScannedDocument.ScannedPage;

/**
 * Writes a set of sheets with truth: {@code TASK/task.yml}, {@code TASK/scans/NAME.ext}, {@code TASK/truth/NAME.json}.
 *
 * <p>Run it with three arguments, the folder, the seed and the number of sheets, and perhaps the number of tasks and the
 * words {@code lean-to} for sections through lean-to roofs instead of eaves and {@code rocking} for hands whose squares
 * rock instead of ends that stray:
 *
 * <pre>mvn -q test-compile
 * java -cp target/test-classes:target/classes:$(mvn -q dependency:build-classpath -Dmdep.outputFile=/dev/stdout) \
 *     wallplate.samples.SampleSet target/samples 1 60 12</pre>
 */
public final class SampleSet {

    private static final int PAGES = 3;

    private final Path folder;
    private final long seed;
    private final Straying straying;

    SampleSet(Path folder, long seed, Straying straying) {
        this.folder = folder;
        this.seed = seed;
        this.straying = straying;
    }

    private static List<SampleTask> eavesTasks(long seed, int tasks) {
        RandomTasks random = new RandomTasks(seed);
        return IntStream.range(0, tasks).mapToObj(random::draw).toList();
    }

    private static List<SampleTask> leanToTasks(long seed, int tasks) {
        LeanToTasks random = new LeanToTasks(seed);
        return IntStream.range(0, tasks).mapToObj(random::draw).toList();
    }

    public static void main(String[] arguments) {
        int sheets = Integer.parseInt(arguments[2]);
        int tasks = arguments.length > 3 ? Integer.parseInt(arguments[3]) : Math.max(1, sheets / 5);
        List<String> words = List.of(arguments);
        Straying straying = words.contains("rocking") ? Straying.SQUARES : Straying.ENDS;
        SampleSet set = new SampleSet(Path.of(arguments[0]), Long.parseLong(arguments[1]), straying);
        if (words.contains("lean-to")) {
            set.writeSheets(leanToTasks(set.seed, tasks), sheets);
        } else {
            set.write(sheets, tasks);
        }
    }

    /** Writes so many sheets, shared out over so many tasks. */
    void write(int sheets, int tasks) {
        writeSheets(eavesTasks(seed, tasks), sheets);
        for (int number = 0; number < sheets / 20; number++) {
            writeDocument(number);
        }
    }

    private void writeSheets(List<SampleTask> tasks, int sheets) {
        for (int number = 0; number < sheets; number++) {
            SampleScan scan = scan(seed, number, tasks, 600, straying);
            save(scan.task() + "/task.yml", scan.taskYaml().getBytes(StandardCharsets.UTF_8));
            save(scan.task() + "/scans/" + scan.file(), scan.content());
            save(scan.task() + "/truth/" + scan.name() + ".json", scan.truth().getBytes(StandardCharsets.UTF_8));
        }
    }

    /** A PDF of three pages, each another learner's scan of one task; page N has the truth file {@code NAME-pN.json}. */
    private void writeDocument(int number) {
        SampleTask task = new RandomTasks(seed).draw(0);
        String name = String.format(Locale.ROOT, "s%d-set-%d", seed, number);
        List<ScannedPage> pages = new ArrayList<>();
        for (int page = 1; page <= PAGES; page++) {
            Chance chance = new Chance(seed * 100_003 + 50_000 + number * PAGES + page);
            SampleSheet sheet = SampleSheet.scanned(task, 300, straying, chance);
            sheet.capture().condition().put("format", "pdf-pages");
            BufferedImage picture = sheet.picture();
            byte[] jpeg = PictureFile.jpeg(picture, 0.8f, sheet.dpi());
            pages.add(new ScannedPage(jpeg, picture.getWidth(), picture.getHeight(), sheet.dpi()));
            String truth = sheet.truth(name + ".pdf");
            save(task.id() + "/truth/" + name + "-p" + page + ".json", truth.getBytes(StandardCharsets.UTF_8));
        }
        save(task.id() + "/scans/" + name + ".pdf", ScannedDocument.of(pages));
    }

    /**
     * The sheet with the given number, counted from 0, of a seed's set.
     *
     * @param tasks over how many tasks the set is shared out
     * @param mostDpi the highest resolution of a scan
     */
    public static SampleScan scan(long seed, int number, int tasks, int mostDpi) {
        return scan(seed, number, eavesTasks(seed, tasks), mostDpi, Straying.ENDS);
    }

    /** The same for a set of sections through lean-to roofs. */
    public static SampleScan leanToScan(long seed, int number, int tasks, int mostDpi) {
        return scan(seed, number, leanToTasks(seed, tasks), mostDpi, Straying.ENDS);
    }

    /** So many sheets drawn and not captured, shared out over so many tasks; other sheets than {@link #scan} gives. */
    public static List<DrawnSheet> drawn(long seed, int sheets, int tasks) {
        List<SampleTask> shared = eavesTasks(seed, tasks);
        return IntStream.range(0, sheets)
                .mapToObj(number -> {
                    SampleTask task = shared.get(number % tasks);
                    String name = String.format(Locale.ROOT, "d%d-%03d", seed, number);
                    Chance chance = new Chance(seed * 100_003 + 70_000 + number);
                    return new DrawnSheet(name, task.toYaml(), SampleSheet.truthOfDrawing(name, task, chance));
                })
                .toList();
    }

    private static SampleScan scan(long seed, int number, List<SampleTask> tasks, int mostDpi, Straying straying) {
        SampleTask task = tasks.get(number % tasks.size());
        Chance chance = new Chance(seed * 100_003 + number);
        SampleSheet sheet = SampleSheet.draw(task, mostDpi, straying, chance);
        String kind = sheet.photographed()
                ? chance.oneOf("jpg", "jpg", "turned.jpg")
                : chance.oneOf("jpg", "jpg", "jpg", "pdf", "png", "tif", "fax.tif");
        sheet.capture().condition().put("format", kind);
        float quality = (float) chance.between(0.6, 0.95);
        String name = String.format(Locale.ROOT, "s%d-%03d", seed, number);
        String file = name + "." + kind.substring(kind.lastIndexOf('.') + 1);
        return new SampleScan(name, task.id(), task.toYaml(), file, bytes(sheet, kind, quality), sheet.truth(file));
    }

    private static byte[] bytes(SampleSheet sheet, String kind, float quality) {
        BufferedImage picture = sheet.picture();
        return switch (kind) {
            case "png" -> PictureFile.png(picture);
            case "tif" -> PictureFile.tiff(picture);
            case "fax.tif" -> PictureFile.tiff(PictureFile.blackAndWhite(picture, 30));
            case "turned.jpg" -> PictureFile.turnedJpeg(picture, quality);
            case "pdf" -> ScannedDocument.of(List.of(new ScannedPage(
                    PictureFile.jpeg(picture, quality, sheet.dpi()), picture.getWidth(), picture.getHeight(), sheet.dpi())));
            default -> PictureFile.jpeg(picture, quality, sheet.dpi());
        };
    }

    private void save(String path, byte[] bytes) {
        Path file = folder.resolve(path);
        try {
            Files.createDirectories(file.getParent());
            Files.write(file, bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
