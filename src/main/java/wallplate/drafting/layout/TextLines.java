package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.List;
import wallplate.drafting.paper.TextMeasure;
import wallplate.drafting.paper.Typeface;

/** Breaks running text into lines that fit a width. */
final class TextLines {

    private final TextMeasure measure;

    TextLines(TextMeasure measure) {
        this.measure = measure;
    }

    /** Broken between words; a word that is wider than the room stands alone and sticks out. */
    List<String> broken(String text, Typeface typeface, double height, double room) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("\\s+")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && measure.widthMm(longer, typeface, height) > room) {
                lines.add(line.toString());
                line.setLength(0);
                line.append(word);
            } else {
                line.setLength(0);
                line.append(longer);
            }
        }
        lines.add(line.toString());
        return lines;
    }
}
