package wallplate.web.guideline;

import java.util.Map;
import wallplate.marking.MarkGroup;
import wallplate.task.PlainNumber;

/** One group with a maximum as it is being filled in; its number is its place in the form, from 1. */
record GroupRow(int number, String id, String title, String maximum) {

    static GroupRow empty(int number) {
        return new GroupRow(number, "", "", "");
    }

    static GroupRow of(int number, MarkGroup group) {
        return new GroupRow(number, group.id(), group.title(), PlainNumber.text(group.maximum()));
    }

    static GroupRow typed(int number, Map<String, String> typed, int typedRow) {
        String row = "groups[%d].".formatted(typedRow);
        return new GroupRow(
                number,
                typed.getOrDefault(row + "id", "").strip(),
                typed.getOrDefault(row + "title", "").strip(),
                typed.getOrDefault(row + "maximum", "").strip());
    }

    boolean isEmpty() {
        return id.isEmpty() && title.isEmpty() && maximum.isEmpty();
    }

    public String name(String field) {
        return "groups[%d].%s".formatted(number, field);
    }

    public String anchor(String field) {
        return "groups-%d-%s".formatted(number, field);
    }
}
