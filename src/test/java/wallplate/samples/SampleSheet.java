package wallplate.samples;

import java.awt.image.BufferedImage;
import java.util.List;
import wallplate.samples.Learner.Straying;

/** One learner's sheet of a task from the first stroke to the captured picture, all from one seed. */
record SampleSheet(Intention intention, SheetDrawing sheet, Capture capture, String hopeless) {

    /** Kinds of sheets that no program can read. */
    static final List<String> HOPELESS =
            List.of("blank", "text", "plan", "graph", "no-bar", "blur", "low-resolution", "half");

    /** A sheet scanned at no more than the given resolution. */
    static SampleSheet draw(SampleTask task, int mostDpi, Straying straying, Chance chance) {
        String hopeless = chance.happens(0.09) ? chance.oneOf(HOPELESS) : "";
        Learner learner = Learner.draw(chance).straying(straying);
        Intention intention = intention(task, learner, chance);
        boolean withoutBar = hopeless.equals("no-bar") || chance.happens(0.03);
        SheetDrawing sheet = List.of("blank", "text", "plan", "graph").contains(hopeless)
                ? OtherSheets.of(hopeless, task.paper(), learner, chance.fork())
                : new SheetComposer(intention, learner, chance.fork()).compose(!withoutBar);
        Capture capture = capture(sheet, hopeless, withoutBar, mostDpi, chance);
        capture.condition().put("neatness", learner.neatness());
        capture.condition().put("pencil", learner.pencil().name());
        return new SampleSheet(intention, sheet, capture, hopeless);
    }

    /** A sheet that can be read, scanned on a flatbed. */
    static SampleSheet scanned(SampleTask task, int dpi, Straying straying, Chance chance) {
        Learner learner = Learner.draw(chance).straying(straying);
        Intention intention = intention(task, learner, chance);
        SheetDrawing sheet = new SheetComposer(intention, learner, chance.fork()).compose(true);
        Capture capture = FlatbedCapture.draw(chance).atDpi(dpi).take(sheet, chance.fork());
        capture.condition().put("neatness", learner.neatness());
        capture.condition().put("pencil", learner.pencil().name());
        return new SampleSheet(intention, sheet, capture, "");
    }

    /** The truth about a sheet that can be read and that nobody captured: much faster than a picture of it. */
    static String truthOfDrawing(String name, SampleTask task, Chance chance) {
        Learner learner = Learner.draw(chance);
        Intention intention = intention(task, learner, chance);
        return TruthFile.ofDrawing(name, intention, new SheetComposer(intention, learner, chance.fork()).compose(true));
    }

    private static Intention intention(SampleTask task, Learner learner, Chance chance) {
        Intention intention = new Intention(task);
        int slips = chance.happens(0.28) ? 0 : chance.whole(1, 4);
        new SlipMaker(intention, chance.fork()).make(slips);
        intention.setOff(learner, chance.fork());
        return intention;
    }

    private static Capture capture(
            SheetDrawing sheet, String hopeless, boolean withoutBar, int mostDpi, Chance chance) {
        FlatbedCapture drawn = FlatbedCapture.draw(chance);
        int most = sheet.paper().size().equals("A3") ? Math.min(mostDpi, 400) : mostDpi;
        FlatbedCapture flatbed = drawn.atDpi(Math.min(drawn.dpi(), most));
        PhoneCapture phone = PhoneCapture.draw(chance);
        boolean photographed = chance.happens(0.27);
        return switch (hopeless) {
            case "no-bar" -> flatbed.trimmed().take(sheet, chance.fork());
            case "half" -> flatbed.take(sheet, chance.fork()).cutOff(chance.between(0.4, 0.6));
            case "low-resolution" -> flatbed.atDpi(chance.oneOf(30, 40, 50)).take(sheet, chance.fork());
            case "blur" -> photographed
                    ? phone.withBlur(14).take(sheet, chance.fork())
                    : flatbed.atDpi(200).withBlur(1.1).take(sheet, chance.fork());
            default -> {
                if (photographed) {
                    yield phone.take(sheet, chance.fork());
                }
                yield (withoutBar ? flatbed.withEdges(true) : flatbed).take(sheet, chance.fork());
            }
        };
    }

    BufferedImage picture() {
        return capture.picture();
    }

    boolean photographed() {
        return capture.condition().get("kind").equals("photo");
    }

    int dpi() {
        return capture.condition().get("dpi") instanceof Integer dpi ? dpi : 0;
    }

    String truth(String file) {
        return TruthFile.of(file, intention, sheet, capture, hopeless);
    }
}
