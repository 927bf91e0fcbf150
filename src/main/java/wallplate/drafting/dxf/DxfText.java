package wallplate.drafting.dxf;

import java.util.Locale;
import wallplate.drafting.paper.Decimals;

/** Pairs of group codes and values, and the handles that objects are known by. */
final class DxfText {

    private final StringBuilder text = new StringBuilder(65_536);
    private int nextHandle = 0x100;

    DxfText pair(int code, String value) {
        text.append(code).append('\n').append(value).append('\n');
        return this;
    }

    DxfText pair(int code, int value) {
        return pair(code, Integer.toString(value));
    }

    DxfText pair(int code, double value) {
        text.append(code).append('\n');
        int before = text.length();
        Decimals.append(text, value);
        if (text.indexOf(".", before) < 0) {
            text.append(".0");
        }
        text.append('\n');
        return this;
    }

    /** A place in the plane, with the codes 10, 20 and 30 or those further on by the given number. */
    DxfText place(int further, double x, double y) {
        return pair(10 + further, x).pair(20 + further, y).pair(30 + further, 0.0);
    }

    DxfText section(String name) {
        return pair(0, "SECTION").pair(2, name);
    }

    DxfText endSection() {
        return pair(0, "ENDSEC");
    }

    String newHandle() {
        return Integer.toHexString(nextHandle++).toUpperCase(Locale.ROOT);
    }

    /** The first handle that no object has. */
    String seed() {
        return Integer.toHexString(nextHandle).toUpperCase(Locale.ROOT);
    }

    /** Plain ASCII: the signs of drawings as every reader knows them, any other letter by its number. */
    static String ascii(String words) {
        StringBuilder plain = new StringBuilder(words.length() + 16);
        for (int index = 0; index < words.length(); index++) {
            char letter = words.charAt(index);
            switch (letter) {
                case '°' -> plain.append("%%d");
                case '×' -> plain.append('x');
                case '–' -> plain.append('-');
                default -> plain.append(letter >= ' ' && letter < 127 ? String.valueOf(letter) : byNumber(letter));
            }
        }
        return plain.toString();
    }

    private static String byNumber(char letter) {
        return String.format(Locale.ROOT, "\\U+%04X", (int) letter);
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
