package wallplate.task.yaml;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.DumperOptions;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.events.AliasEvent;
import org.yaml.snakeyaml.events.Event;
import org.yaml.snakeyaml.events.NodeEvent;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;
import org.yaml.snakeyaml.representer.Representer;
import wallplate.task.Fault;

/** Reads YAML 1.1 text into entries and writes plain values as YAML text. */
public final class YamlText {

    /** Where a fault of the file as a whole is reported. */
    public static final String WHOLE_FILE = "task file";

    /** Characters; a long task file has two thousand. */
    private static final int LONGEST_TEXT = 100_000;

    /** Groups within groups; a task file has three, a marking guideline a few more. */
    private static final int DEEPEST_NESTING = 20;

    private final List<Fault> faults = new ArrayList<>();

    private YamlText() {}

    /**
     * What came of reading: the group of the top level, and every fault found on the way. With a fault of the whole
     * file the group is empty.
     */
    public record Reading(Entry.Group top, List<Fault> faults) {
        public Reading {
            faults = List.copyOf(faults);
        }
    }

    /** Reads one document; never throws for what stands in it. */
    public static Reading read(String text) {
        YamlText reader = new YamlText();
        return new Reading(reader.top(text), reader.faults);
    }

    /** Writes maps, lists, strings, numbers and truth values, one key a line, in the order given. */
    public static String write(Map<String, ?> values) {
        DumperOptions options = new DumperOptions();
        options.setDefaultFlowStyle(DumperOptions.FlowStyle.BLOCK);
        options.setAllowUnicode(true);
        options.setSplitLines(false);
        options.setLineBreak(DumperOptions.LineBreak.UNIX);
        return new Yaml(new SafeConstructor(limits()), new Representer(options), options).dump(values);
    }

    private Entry.Group top(String text) {
        Entry.Group nothing = new Entry.Group(Map.of());
        if (text.length() > LONGEST_TEXT) {
            faults.add(new Fault(WHOLE_FILE, text.length() + " characters", "at most " + LONGEST_TEXT + " characters"));
            return nothing;
        }
        String body = withoutByteOrderMark(text);
        try {
            if (!isPlain(body)) {
                return nothing;
            }
            Node node = new Yaml(limits()).compose(new java.io.StringReader(body));
            if (node instanceof MappingNode mapping) {
                return group("", mapping);
            }
            faults.add(new Fault(
                    WHOLE_FILE,
                    node == null ? "" : "no keys at its top level",
                    "YAML text with keys such as id, title, detail and scale, each followed by a colon"));
        } catch (YAMLException malformed) {
            faults.add(malformed(malformed));
        }
        return nothing;
    }

    private static String withoutByteOrderMark(String text) {
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }

    /** Refuses anchors, aliases and tags before anything is built from them, each with its line. */
    private boolean isPlain(String text) {
        int before = faults.size();
        for (Event event : new Yaml(limits()).parse(new java.io.StringReader(text))) {
            if (event instanceof AliasEvent alias) {
                faults.add(new Fault(
                        WHOLE_FILE, "the alias *" + alias.getAnchor() + line(event), "every value written out"));
            } else if (event instanceof NodeEvent node && node.getAnchor() != null) {
                faults.add(new Fault(
                        WHOLE_FILE, "the anchor &" + node.getAnchor() + line(event), "every value written out"));
            }
            tagOf(event)
                    .ifPresent(tag -> faults.add(new Fault(
                            WHOLE_FILE, "the tag " + shortened(tag) + line(event), "plain values without tags")));
        }
        return faults.size() == before;
    }

    private static java.util.Optional<String> tagOf(Event event) {
        if (event instanceof org.yaml.snakeyaml.events.ScalarEvent scalar) {
            return java.util.Optional.ofNullable(scalar.getTag()).filter(tag -> !tag.equals("!"));
        }
        if (event instanceof org.yaml.snakeyaml.events.CollectionStartEvent collection) {
            return java.util.Optional.ofNullable(collection.getTag());
        }
        return java.util.Optional.empty();
    }

    private static String line(Event event) {
        return " in line " + (event.getStartMark().getLine() + 1);
    }

    private static String shortened(String text) {
        return text.length() <= 60 ? text : text.substring(0, 60) + "...";
    }

    private static Fault malformed(YAMLException malformed) {
        String accepted = "well-formed YAML: spaces (not tabs) before keys, a colon and a space after each key,"
                + " brackets and quotes closed, one document";
        if (malformed instanceof MarkedYAMLException marked && marked.getProblemMark() != null) {
            return new Fault(
                    WHOLE_FILE,
                    "%s (line %d, column %d)"
                            .formatted(
                                    shortened(
                                            String.valueOf(marked.getProblem()).strip()),
                                    marked.getProblemMark().getLine() + 1,
                                    marked.getProblemMark().getColumn() + 1),
                    accepted);
        }
        return new Fault(
                WHOLE_FILE, shortened(String.valueOf(malformed.getMessage()).strip()), accepted);
    }

    private Entry entry(String path, Node node) {
        if (node instanceof MappingNode mapping) {
            return group(path + ".", mapping);
        }
        if (node instanceof SequenceNode sequence) {
            List<Entry> entries = new ArrayList<>();
            for (Node element : sequence.getValue()) {
                entries.add(entry(path + "[" + (entries.size() + 1) + "]", element));
            }
            return new Entry.Row(entries);
        }
        return scalar((ScalarNode) node);
    }

    private Entry.Group group(String prefix, MappingNode mapping) {
        Map<String, Entry> entries = new LinkedHashMap<>();
        for (NodeTuple tuple : mapping.getValue()) {
            if (!(tuple.getKeyNode() instanceof ScalarNode keyNode)) {
                faults.add(new Fault(prefix + "?", "a key that is not a single word", "a word before each colon"));
                continue;
            }
            String key = keyNode.getValue();
            Entry entry = entry(prefix + key, tuple.getValueNode());
            if (entries.putIfAbsent(key, entry) != null) {
                faults.add(new Fault(
                        prefix + key,
                        "the key a second time in line "
                                + (keyNode.getStartMark().getLine() + 1),
                        "every key once"));
            }
        }
        return new Entry.Group(entries);
    }

    private static Entry.Scalar scalar(ScalarNode node) {
        return new Entry.Scalar(node.getValue(), !node.isPlain(), kind(node.getTag()));
    }

    private static Entry.Kind kind(@Nullable Tag tag) {
        if (Tag.INT.equals(tag)) {
            return Entry.Kind.WHOLE_NUMBER;
        }
        if (Tag.FLOAT.equals(tag)) {
            return Entry.Kind.FRACTION;
        }
        if (Tag.BOOL.equals(tag)) {
            return Entry.Kind.YES_OR_NO;
        }
        return Tag.NULL.equals(tag) ? Entry.Kind.NOTHING : Entry.Kind.TEXT;
    }

    private static LoaderOptions limits() {
        LoaderOptions options = new LoaderOptions();
        options.setCodePointLimit(LONGEST_TEXT);
        options.setNestingDepthLimit(DEEPEST_NESTING);
        options.setMaxAliasesForCollections(0);
        options.setAllowRecursiveKeys(false);
        options.setProcessComments(false);
        return options;
    }
}
