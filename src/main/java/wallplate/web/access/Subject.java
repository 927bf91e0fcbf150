package wallplate.web.access;

import wallplate.ownership.Kind;

/**
 * A record that an address names.
 *
 * @param beginning how patterns of such addresses begin; the whole pattern for one with a parameter
 * @param name of the variable or parameter that has the record's number or name
 * @param isParameter whether it is sent along as a field, and not a part of the address itself
 * @param isShared whether every teacher may read such records, whoever has them
 */
record Subject(String beginning, String name, Kind kind, boolean isParameter, boolean isShared) {

    static Subject about(String beginning, String variable, Kind kind) {
        return new Subject(beginning, variable, kind, false, false);
    }

    static Subject shared(String beginning, String variable, Kind kind) {
        return new Subject(beginning, variable, kind, false, true);
    }

    static Subject sent(String pattern, String parameter, Kind kind) {
        return new Subject(pattern, parameter, kind, true, false);
    }

    boolean concerns(Rule rule) {
        return isParameter ? rule.pattern().equals(beginning) : rule.pattern().startsWith(beginning);
    }
}
