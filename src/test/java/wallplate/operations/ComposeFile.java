package wallplate.operations;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/** A file that describes containers, read as plain YAML: anchors and merges are resolved. */
final class ComposeFile {

    private final Map<String, Object> content;

    private ComposeFile(Map<String, Object> content) {
        this.content = content;
    }

    static ComposeFile read(String name) throws IOException {
        return new ComposeFile(new Yaml(new SafeConstructor(new LoaderOptions())).load(Files.readString(Path.of(name))));
    }

    /**
     * This file with another laid over it, as the Compose Specification has it ("Merge", spec.md): mappings are merged key
     * by key, sequences are joined, other values are replaced.
     */
    ComposeFile with(ComposeFile other) {
        return new ComposeFile(merged(content, other.content));
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> merged(Map<String, Object> below, Map<String, Object> above) {
        Map<String, Object> merged = new LinkedHashMap<>(below);
        above.forEach((key, value) -> {
            Object old = below.get(key);
            if (old instanceof Map && value instanceof Map) {
                merged.put(key, merged((Map<String, Object>) old, (Map<String, Object>) value));
            } else if (old instanceof List && value instanceof List && !key.equals("entrypoint") && !key.equals("command")) {
                List<Object> both = new ArrayList<>((List<Object>) old);
                ((List<Object>) value).stream().filter(one -> !both.contains(one)).forEach(both::add);
                merged.put(key, both);
            } else {
                merged.put(key, value);
            }
        });
        return merged;
    }

    Map<String, Object> content() {
        return content;
    }

    Map<String, Map<String, Object>> services() {
        Map<String, Map<String, Object>> services = new TreeMap<>();
        map(content, "services").forEach((name, service) -> services.put(name, asMap(service)));
        return services;
    }

    /** The environment of a service, its values as texts. */
    Map<String, String> environment(String service) {
        Map<String, String> environment = new TreeMap<>();
        map(services().get(service), "environment").forEach((key, value) -> environment.put(key, String.valueOf(value)));
        return environment;
    }

    static Map<String, Object> map(Map<String, Object> in, String key) {
        return in.containsKey(key) ? asMap(in.get(key)) : Map.of();
    }

    @SuppressWarnings("unchecked")
    static List<String> list(Map<String, Object> in, String key) {
        return (List<String>) in.getOrDefault(key, List.of());
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> asMap(Object value) {
        return (Map<String, Object>) value;
    }
}
