package wallplate.report;

import java.util.List;
import java.util.Optional;
import tools.jackson.core.json.JsonWriteFeature;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;
import tools.jackson.core.util.Separators;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import wallplate.assessment.AssessedSheet;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Segment;
import wallplate.marking.GroupTotal;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;
import wallplate.sheet.Calibration;
import wallplate.sheet.LevelPage;
import wallplate.solver.Expected;

/**
 * The result of one sheet as JSON, schema 1: keys in a fixed order, numbers rounded to what they are worth, the same
 * result in the same bytes.
 *
 * <p>Values are millimetres on paper and degrees. Evidence is in pixels of the page as it was handed in, x right and y
 * down.
 */
public final class ResultFile {

    /** The schema that is written. */
    public static final int SCHEMA = 1;

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final Separators SEPARATORS =
            Separators.createDefaultInstance().withObjectNameValueSpacing(Separators.Spacing.AFTER);
    private static final JsonMapper MAPPER =
            JsonMapper.builder().disable(JsonWriteFeature.ESCAPE_NON_ASCII).build();

    private ResultFile() {}

    /** The whole file as text, lines ended by a single line feed. */
    public static String write(AssessedSheet sheet) {
        DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter(SEPARATORS).withObjectIndenter(indenter);
        return MAPPER.writer().with(printer).writeValueAsString(root(sheet)) + "\n";
    }

    private static ObjectNode root(AssessedSheet sheet) {
        ObjectNode root = NODES.objectNode();
        root.put("schema", SCHEMA);
        root.put("task", sheet.expected().task().id());
        root.put("scan", sheet.scan());
        root.put("page", sheet.page());
        if (sheet instanceof AssessedSheet.Read read) {
            root.put("status", "read");
            root.set("sheet", sheetFacts(read.levelPage()));
            root.set("measurements", measurements(read));
            if (!read.measured().lineQuality().isEmpty()) {
                root.set("lineQuality", lineQuality(read));
            }
            root.put("guideline", read.marked().guideline());
            root.set("marks", marks(read));
            root.set("groups", groups(read.marked()));
            root.set("total", total(read.marked()));
        } else if (sheet instanceof AssessedSheet.Unreadable unreadable) {
            root.put("status", "unreadable");
            root.put("reason", unreadable.reason());
        }
        return root;
    }

    private static ObjectNode sheetFacts(LevelPage page) {
        ObjectNode facts = NODES.objectNode();
        facts.set("pixelsPerMm", Numbers.rounded(page.scanPixelsPerMm(), 3));
        facts.set("rotationDegrees", Numbers.rounded(page.rotationDegrees(), 3));
        facts.set("calibration", calibration(page.calibration()));
        ArrayNode warnings = facts.putArray("warnings");
        page.warnings().forEach(warnings::add);
        return facts;
    }

    private static ObjectNode calibration(Calibration calibration) {
        ObjectNode node = NODES.objectNode();
        node.put("source", calibration.source().word());
        node.set("lengthMm", Numbers.rounded(calibration.lengthMm(), 2));
        node.set("uncertaintyPercent", Numbers.rounded(calibration.uncertaintyPercent(), 3));
        node.set("stretchUncertaintyPercent", Numbers.rounded(calibration.stretchUncertaintyPercent(), 3));
        return node;
    }

    private static ArrayNode measurements(AssessedSheet.Read read) {
        ArrayNode all = NODES.arrayNode();
        MeasuredSheet measured = read.measured();
        for (Expected expected : read.expected().values()) {
            Measurement measurement = measured.measurement(expected.key())
                    .orElseGet(() -> Measurement.uncertain(expected.key(), "not measured on this sheet"));
            String unit = expected instanceof Expected.Angle ? "deg" : "mm";
            all.add(measurement(measurement, unit, read.levelPage().toScan()));
        }
        return all;
    }

    /** What no task asks for stands apart, so that the measurements stay those of the task's keys. */
    private static ArrayNode lineQuality(AssessedSheet.Read read) {
        ArrayNode all = NODES.arrayNode();
        for (Measurement quality : read.measured().lineQuality()) {
            String unit = quality.key().endsWith("-darkness") ? "%" : "mm";
            all.add(measurement(quality, unit, read.levelPage().toScan()));
        }
        return all;
    }

    private static ObjectNode measurement(Measurement measurement, String unit, PlaneMap toScan) {
        ObjectNode node = NODES.objectNode();
        node.put("key", measurement.key());
        Finding finding = measurement.finding();
        if (finding instanceof Finding.Absent) {
            node.put("state", "absent");
        } else if (finding instanceof Finding.Uncertain uncertain) {
            node.put("state", "uncertain");
            node.put("reason", uncertain.reason());
            if (!uncertain.readings().isEmpty()) {
                ArrayNode readings = node.putArray("readings");
                uncertain.readings().forEach(reading -> readings.add(Numbers.rounded(reading, 3)));
            }
        } else {
            node.put("state", "measured");
            putFound(node, "value", finding);
            putUnit(node, finding, unit);
        }
        putEvidence(node, measurement.evidence(), toScan);
        return node;
    }

    private static void putUnit(ObjectNode node, Finding finding, String unit) {
        if (finding instanceof Finding.Quantity quantity) {
            node.put("unit", unit);
            node.set("uncertainty", Numbers.rounded(quantity.uncertainty(), 3));
        }
    }

    private static void putEvidence(ObjectNode node, List<Segment> evidence, PlaneMap toScan) {
        if (evidence.isEmpty()) {
            return;
        }
        ArrayNode strokes = node.putArray("evidence");
        for (Segment stroke : evidence) {
            Segment onScan = toScan.apply(stroke);
            strokes.addArray()
                    .add(Numbers.rounded(onScan.start().x(), 1))
                    .add(Numbers.rounded(onScan.start().y(), 1))
                    .add(Numbers.rounded(onScan.end().x(), 1))
                    .add(Numbers.rounded(onScan.end().y(), 1));
        }
    }

    private static void putFound(ObjectNode node, String name, Finding finding) {
        if (finding instanceof Finding.Quantity quantity) {
            node.set(name, Numbers.rounded(quantity.value(), 3));
        } else if (finding instanceof Finding.Count count) {
            node.put(name, count.number());
        } else if (finding instanceof Finding.YesNo yesNo) {
            node.put(name, yesNo.yes());
        } else if (finding instanceof Finding.Word word) {
            node.put(name, word.word());
        }
    }

    private static void putExpected(ObjectNode node, Expected expected) {
        if (expected instanceof Expected.Length length) {
            node.set("expected", Numbers.rounded(length.exactMm(), 3));
        } else if (expected instanceof Expected.Angle angle) {
            node.set("expected", Numbers.rounded(angle.degrees(), 3));
        } else if (expected instanceof Expected.Count count) {
            node.put("expected", count.number());
        } else if (expected instanceof Expected.YesNo yesNo) {
            node.put("expected", yesNo.yes());
        } else if (expected instanceof Expected.Word word) {
            node.put("expected", word.word());
        }
    }

    private static ArrayNode marks(AssessedSheet.Read read) {
        ArrayNode marks = NODES.arrayNode();
        read.marked().marks().forEach(mark -> marks.add(mark(mark)));
        return marks;
    }

    private static ObjectNode mark(Mark mark) {
        ObjectNode node = NODES.objectNode();
        node.put("criterion", mark.criterion());
        node.put("title", mark.title());
        mark.key().ifPresent(key -> node.put("key", key));
        node.put("verdict", mark.verdict().word());
        node.set("awarded", Numbers.marks(mark.awarded()));
        node.set("available", Numbers.marks(mark.available()));
        mark.expected().ifPresent(expected -> putExpected(node, expected));
        mark.measured().ifPresent(found -> putFound(node, "measured", found));
        Optional<Double> tolerance = mark.tolerance();
        tolerance.ifPresent(value -> node.set("tolerance", Numbers.rounded(value, 3)));
        ArrayNode slips = node.putArray("slips");
        mark.slips().forEach(slips::add);
        node.put("feedback", mark.feedback());
        return node;
    }

    private static ArrayNode groups(MarkedSheet marked) {
        ArrayNode groups = NODES.arrayNode();
        for (GroupTotal group : marked.groups()) {
            ObjectNode node = groups.addObject();
            node.put("id", group.id());
            node.put("title", group.title());
            node.set("maximum", Numbers.marks(group.maximum()));
            ArrayNode criteria = node.putArray("criteria");
            group.criteria().forEach(criteria::add);
        }
        return groups;
    }

    private static ObjectNode total(MarkedSheet marked) {
        ObjectNode total = NODES.objectNode();
        total.set("awarded", Numbers.marks(marked.awarded()));
        total.set("available", Numbers.marks(marked.available()));
        total.put("undecided", marked.undecided());
        return total;
    }
}
