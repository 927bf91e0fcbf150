package wallplate.drafting.dxf;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.mozilla.javascript.Context;
import org.mozilla.javascript.Scriptable;
import org.mozilla.javascript.ScriptableObject;
import tools.jackson.databind.json.JsonMapper;

/**
 * A DXF file as a general-purpose reader understands it: dxf-parser 0.6.1 (MIT licence, test resources), run by Rhino.
 */
final class ReadDrawing {

    private final Map<String, Object> content;

    private ReadDrawing(Map<String, Object> content) {
        this.content = content;
    }

    static ReadDrawing of(byte[] dxf) throws IOException {
        try (Context context = Context.enter()) {
            context.setInterpretedMode(true);
            context.setLanguageVersion(Context.VERSION_ES6);
            Scriptable scope = context.initStandardObjects();
            context.evaluateString(scope, "var window = this; var self = this;", "surroundings", 1, null);
            context.evaluateString(scope, resource("/dxf-parser/dxf-parser.js"), "dxf-parser.js", 1, null);
            ScriptableObject.putProperty(scope, "file", new String(dxf, StandardCharsets.US_ASCII));
            Object json = context.evaluateString(
                    scope, "JSON.stringify(new DxfParser().parseSync(file))", "reading", 1, null);
            return new ReadDrawing(asMap(JsonMapper.shared().readValue((String) json, Map.class)));
        }
    }

    private static String resource(String name) throws IOException {
        try (InputStream stream = ReadDrawing.class.getResourceAsStream(name)) {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    Object header(String name) {
        return asMap(content.get("header")).get(name);
    }

    List<Map<String, Object>> entities(String type, String layer) {
        return ((List<?>) content.get("entities"))
                .stream()
                        .map(ReadDrawing::asMap)
                        .filter(entity -> type.equals(entity.get("type")) && layer.equals(entity.get("layer")))
                        .toList();
    }

    Map<String, Object> layers() {
        return asMap(asMap(asMap(content.get("tables")).get("layer")).get("layers"));
    }

    /** The x or y of one end of a line. */
    static double place(Map<String, Object> line, int end, String axis) {
        return ((Number) asMap(((List<?>) line.get("vertices")).get(end)).get(axis)).doubleValue();
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> asMap(Object value) {
        return (Map<String, Object>) value;
    }
}
