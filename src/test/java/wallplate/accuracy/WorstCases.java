package wallplate.accuracy;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import wallplate.accuracy.Scoring.Case;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.measure.Measurement;
import wallplate.sheet.InkImage;
import wallplate.sheet.LevelPage;

/**
 * A page that shows the worst cases of a run: the place on the level page, the lines as drawn in green, the measured
 * evidence in red.
 */
final class WorstCases {

    private static final double PIXELS_PER_MM = 20;
    private static final double MARGIN_MM = 5;
    private static final double MOST_MM = 45;

    private final Path folder;

    WorstCases(Path folder) {
        this.folder = folder;
    }

    /** Writes {@code index.html} with its pictures into the folder. */
    void write(String title, AccuracyTable table, List<Case> cases) throws IOException {
        Files.createDirectories(folder);
        StringBuilder html = new StringBuilder("<!DOCTYPE html><html lang=\"en\"><meta charset=\"utf-8\"><title>")
                .append(title)
                .append("</title><style>body{font-family:sans-serif}figure{display:inline-block;margin:8px;width:420px;"
                        + "vertical-align:top}img{max-width:420px;max-height:420px;border:1px solid #999}</style><h1>")
                .append(title)
                .append("</h1><p>Green: as drawn. Red: the strokes that the value was taken from.</p>");
        for (int number = 0; number < cases.size(); number++) {
            Case shown = cases.get(number);
            html.append("<figure>");
            if (shown.result().page().isPresent()) {
                String file = "case-" + (number + 1) + ".png";
                ImageIO.write(picture(shown), "png", folder.resolve(file).toFile());
                html.append("<img alt=\"\" src=\"").append(file).append("\">");
            }
            html.append("<figcaption>").append(shown.result().truth().name()).append(": ").append(shown.key());
            html.append(", ").append(shown.what()).append("</figcaption></figure>");
        }
        html.append("<pre>").append(table.text()).append("</pre></html>");
        Files.writeString(folder.resolve("index.html"), html);
    }

    private static BufferedImage picture(Case shown) {
        LevelPage page = shown.result().page().orElseThrow();
        List<Segment> drawn = drawn(shown.result().truth(), page.toScan().inverse(), part(shown.key()));
        List<Segment> evidence = shown.result().measured().orElseThrow()
                .measurement(shown.key()).map(Measurement::evidence).orElse(List.of());
        double[] window = window(evidence.isEmpty() ? drawn : evidence, page.ink());
        BufferedImage picture = crop(page.ink(), window);
        Graphics2D graphics = picture.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        draw(graphics, drawn, window, new Color(0, 140, 0), 1.5f);
        draw(graphics, evidence, window, Color.RED, 2.5f);
        graphics.dispose();
        return picture;
    }

    private static String part(String key) {
        String part = key.substring(0, key.indexOf('.'));
        return part.equals("roof") ? "rafter" : part;
    }

    private static List<Segment> drawn(TruthSheet truth, PlaneMap toPage, String part) {
        List<Segment> lines = new ArrayList<>();
        for (Map.Entry<String, Segment> line : truth.lines().entrySet()) {
            if (line.getKey().startsWith(part)) {
                Segment drawn = line.getValue();
                lines.add(new Segment(
                        toPage.apply(truth.inPixels(drawn.start())), toPage.apply(truth.inPixels(drawn.end()))));
            }
        }
        return lines;
    }

    /** Left, bottom, width and height of the part of the page that is shown, in millimetres. */
    private static double[] window(List<Segment> shown, InkImage ink) {
        double left = ink.widthMm();
        double bottom = ink.heightMm();
        double right = 0;
        double top = 0;
        for (Segment line : shown) {
            for (Point end : List.of(line.start(), line.end())) {
                left = Math.min(left, end.x());
                right = Math.max(right, end.x());
                bottom = Math.min(bottom, end.y());
                top = Math.max(top, end.y());
            }
        }
        if (right < left) {
            return new double[] {0, 0, ink.widthMm(), ink.heightMm()};
        }
        double width = Math.min(MOST_MM, right - left + 2 * MARGIN_MM);
        double height = Math.min(MOST_MM, top - bottom + 2 * MARGIN_MM);
        return new double[] {(left + right - width) / 2, (bottom + top - height) / 2, width, height};
    }

    private static BufferedImage crop(InkImage ink, double[] window) {
        double scale = Math.min(PIXELS_PER_MM, 900 / Math.max(window[2], window[3]));
        int width = (int) Math.ceil(window[2] * scale);
        int height = (int) Math.ceil(window[3] * scale);
        BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int grey = 255 - (int) ink.at(window[0] + (x + 0.5) / scale, window[1] + window[3] - (y + 0.5) / scale);
                picture.setRGB(x, y, grey << 16 | grey << 8 | grey);
            }
        }
        return picture;
    }

    private static void draw(Graphics2D graphics, List<Segment> lines, double[] window, Color colour, float width) {
        double scale = Math.min(PIXELS_PER_MM, 900 / Math.max(window[2], window[3]));
        graphics.setColor(colour);
        graphics.setStroke(new BasicStroke(width));
        for (Segment line : lines) {
            graphics.draw(new Line2D.Double(
                    (line.start().x() - window[0]) * scale, (window[1] + window[3] - line.start().y()) * scale,
                    (line.end().x() - window[0]) * scale, (window[1] + window[3] - line.end().y()) * scale));
        }
    }
}
