package wallplate.samples;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import wallplate.geometry.Point;

/** Plain drawing-office capitals made of straight strokes on a grid four wide and six high. */
final class StrokeFont {

    private static final String GLYPHS =
            """
            A 00 26 40|12 32
            B 00 06 36 45 44 33 03|33 42 41 30 00
            C 45 36 16 05 01 10 30 41
            D 00 06 26 44 42 20 00
            E 40 00 06 46|03 33
            F 00 06 46|03 33
            G 45 36 16 05 01 10 30 41 43 23
            H 00 06|40 46|03 43
            I 20 26
            J 36 31 20 10 01
            K 00 06|46 03 40
            L 06 00 40
            M 00 06 23 46 40
            N 00 06 40 46
            O 10 01 05 16 36 45 41 30 10
            P 00 06 36 45 44 33 03
            Q 10 01 05 16 36 45 41 30 10|22 40
            R 00 06 36 45 44 33 03|23 40
            S 45 36 16 05 04 13 33 42 41 30 10 01
            T 20 26|06 46
            U 06 01 10 30 41 46
            V 06 20 46
            W 06 10 24 30 46
            X 00 46|06 40
            Y 06 23 46|23 20
            Z 06 46 00 40
            0 10 01 05 16 36 45 41 30 10
            1 15 26 20
            2 05 16 36 45 44 00 40
            3 05 16 36 45 44 33 42 41 30 10 01|13 33
            4 30 36 02 42
            5 46 06 04 34 43 41 30 10 01
            6 45 36 16 05 01 10 30 41 42 33 13 02
            7 06 46 10
            8 13 04 05 16 36 45 44 33 13 02 01 10 30 41 42 33
            9 01 10 30 41 45 36 16 05 04 13 33 44
            : 21 22|24 25
            - 13 33
            . 20 21
            / 00 46
            """;

    private static final Map<Character, List<List<Point>>> STROKES = parse();

    private StrokeFont() {}

    /** The strokes of a text whose first letter's lower left corner is the given place; small letters come as capitals. */
    static List<List<Point>> write(String text, Point start, double heightMm, double slantTangent) {
        double unit = heightMm / 6;
        double advance = 0;
        List<List<Point>> strokes = new ArrayList<>();
        for (char letter : text.toUpperCase(Locale.ROOT).toCharArray()) {
            for (List<Point> stroke : STROKES.getOrDefault(letter, List.of())) {
                double left = advance;
                strokes.add(stroke.stream()
                        .map(place -> new Point(
                                start.x() + left + (place.x() + slantTangent * place.y()) * unit,
                                start.y() + place.y() * unit))
                        .toList());
            }
            advance += (letter == ' ' ? 3.5 : 5.6) * unit;
        }
        return strokes;
    }

    static double width(String text, double heightMm) {
        return text.length() * 5.6 * heightMm / 6;
    }

    private static Map<Character, List<List<Point>>> parse() {
        Map<Character, List<List<Point>>> strokes = new LinkedHashMap<>();
        GLYPHS.lines().forEach(line -> {
            List<List<Point>> letter = new ArrayList<>();
            for (String stroke : line.substring(2).split("\\|")) {
                letter.add(Arrays.stream(stroke.split(" "))
                        .map(place -> new Point(place.charAt(0) - '0', place.charAt(1) - '0'))
                        .toList());
            }
            strokes.put(line.charAt(0), List.copyOf(letter));
        });
        return strokes;
    }
}
