package wallplate.records;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A class list as people have it: one learner a line, or a CSV with a heading.
 *
 * <p>A line is a name, or a name and a candidate number parted by a comma, a semicolon or a tab. A first line that
 * names its columns is a heading: {@code name} and {@code number} (or {@code candidate}) may then stand in any order.
 * Empty lines are passed over.
 */
public final class ClassList {

    private static final int LONGEST_NAME = 200;
    private static final int LONGEST_NUMBER = 60;

    private ClassList() {}

    /** The learners in the order of the list; texts that are too long are cut. */
    public static List<ClassListEntry> read(String text) {
        List<List<String>> lines = text.replace("\uFEFF", "")
                .lines()
                .filter(line -> !line.isBlank())
                .map(ClassList::fields)
                .toList();
        if (lines.isEmpty()) {
            return List.of();
        }
        int nameColumn = column(lines.get(0), "name", "learner");
        boolean heading = nameColumn >= 0;
        int numberColumn = heading ? column(lines.get(0), "number", "candidate", "no") : 1;
        List<ClassListEntry> entries = new ArrayList<>();
        for (List<String> fields : heading ? lines.subList(1, lines.size()) : lines) {
            String name = field(fields, heading ? nameColumn : 0, LONGEST_NAME);
            if (!name.isEmpty()) {
                entries.add(new ClassListEntry(name, field(fields, numberColumn, LONGEST_NUMBER)));
            }
        }
        return List.copyOf(entries);
    }

    private static int column(List<String> heading, String... words) {
        for (int column = 0; column < heading.size(); column++) {
            String title = heading.get(column).toLowerCase(Locale.ROOT);
            for (String word : words) {
                if (title.equals(word) || title.startsWith(word + " ") || title.endsWith(" " + word)) {
                    return column;
                }
            }
        }
        return -1;
    }

    private static String field(List<String> fields, int column, int longest) {
        if (column < 0 || column >= fields.size()) {
            return "";
        }
        String field = fields.get(column).strip();
        return field.length() <= longest ? field : field.substring(0, longest);
    }

    /** A field in double quotes may hold the separator and doubled quotes, as RFC 4180 has it. */
    private static List<String> fields(String line) {
        List<String> fields = new ArrayList<>();
        StringBuilder field = new StringBuilder();
        boolean quoted = false;
        for (int index = 0; index < line.length(); index++) {
            char letter = line.charAt(index);
            if (letter == '"' && quoted && index + 1 < line.length() && line.charAt(index + 1) == '"') {
                field.append('"');
                index++;
            } else if (letter == '"') {
                quoted = !quoted;
            } else if (!quoted && (letter == ',' || letter == ';' || letter == '\t')) {
                fields.add(field.toString());
                field.setLength(0);
            } else {
                field.append(letter);
            }
        }
        fields.add(field.toString());
        return fields;
    }
}
