package wallplate.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import wallplate.geometry.Segment;
import wallplate.sheet.Calibration;
import wallplate.solver.ExpectedDrawing;
import wallplate.stroke.Edge;

/** What was found on one sheet, key by key, while it is being measured. */
final class Findings {

    /** Edges shorter than this, such as a board's closing lines, are little longer than a line is broad. */
    private static final double TINY_MM = 2.2;

    private static final double SHORT_MM = 6;

    /** What is left of an error in each length when all that is known of it is accounted for; one standard deviation. */
    private static final double LEAST_SIGMA_MM = 0.012;

    private final DrawingView view;
    private final Calibration calibration;
    private final Map<String, Measurement> found = new LinkedHashMap<>();
    private final Set<String> inPlace = new HashSet<>();

    Findings(DrawingView view, Calibration calibration) {
        this.view = view;
        this.calibration = calibration;
    }

    /** One measurement for each key that a task asks for, in its order; what was never found is uncertain. */
    List<Measurement> of(ExpectedDrawing expected) {
        return expected.values().stream()
                .map(value -> at(value.key())
                        .orElseGet(() -> Measurement.uncertain(value.key(), "the lines that it is measured from were not found")))
                .toList();
    }

    Optional<Measurement> at(String key) {
        return Optional.ofNullable(found.get(key));
    }

    /** The measurements so far, in the order in which they were first put down. */
    List<Measurement> all() {
        return new ArrayList<>(found.values());
    }

    boolean isUncertain(String key) {
        return at(key).map(each -> each.finding() instanceof Finding.Uncertain).orElse(false);
    }

    // --- putting down ---

    /** A length in millimetres with the standard deviation of its lines' places, to which the scale's is added. */
    void length(String key, double value, double sigma, Edge... evidence) {
        double scale = calibration.lengthDeviation(value, uprightest(evidence));
        double uncertainty = Math.sqrt(sigma * sigma + scale * scale + LEAST_SIGMA_MM * LEAST_SIGMA_MM);
        put(key, new Finding.Quantity(value, uncertainty), evidence);
    }

    /** The inclination of the most level of the lines, across which a length is most upright. */
    private static double uprightest(Edge... evidence) {
        return Stream.of(evidence)
                .mapToDouble(edge -> Math.abs(edge.line().inclinationDegrees()))
                .min()
                .orElse(0);
    }

    /** A length in millimetres between two edges. */
    void between(String key, double value, Edge first, Edge second) {
        length(key, value, Math.hypot(placeSigma(first), placeSigma(second)), first, second);
    }

    /** Short edges stand between others, whose ink runs into theirs at both ends. */
    static double placeSigma(Edge edge) {
        if (edge.length() < TINY_MM) {
            return Math.hypot(edge.offsetSigmaMm(), 0.1);
        }
        return edge.length() < SHORT_MM ? Math.hypot(edge.offsetSigmaMm(), 0.025) : Math.hypot(edge.offsetSigmaMm(), 0.008);
    }

    void put(String key, Finding finding, Edge... evidence) {
        found.put(key, new Measurement(key, finding, segments(evidence)));
    }

    void yesNo(String key, boolean yes) {
        put(key, new Finding.YesNo(yes));
    }

    void word(String key, String word) {
        put(key, new Finding.Word(word));
    }

    void count(String key, int number) {
        put(key, new Finding.Count(number));
    }

    void absent(String... keys) {
        for (String key : keys) {
            put(key, new Finding.Absent());
        }
    }

    void uncertain(String reason, String... keys) {
        for (String key : keys) {
            put(key, Finding.Uncertain.because(reason));
        }
    }

    /** Uncertain between readings that explain the sheet about equally well, each with the value that it gives. */
    void readings(String key, String reason, List<Double> values) {
        put(key, new Finding.Uncertain(reason, values));
    }

    /** Notes that a size's lines begin and end where only that part's do, so that however wrong it is they are no other's. */
    void inPlace(String key) {
        inPlace.add(key);
    }

    boolean isInPlace(String key) {
        return inPlace.contains(key);
    }

    // --- doubting what was put down ---

    /** Makes measured values uncertain; what is absent stays absent. */
    void unsettle(String reason, String... keys) {
        for (String key : keys) {
            if (at(key).map(each -> each.finding().isMeasured()).orElse(false)) {
                uncertain(reason, key);
            }
        }
    }

    /** Makes what is measured or absent uncertain, with the value that it would have had; what was never found stays so. */
    void leaveOpen(String reason, String... keys) {
        for (String key : keys) {
            at(key).map(Measurement::finding).ifPresent(finding -> {
                if (finding instanceof Finding.Quantity quantity) {
                    readings(key, reason, List.of(quantity.value()));
                } else if (!(finding instanceof Finding.Uncertain)) {
                    uncertain(reason, key);
                }
            });
        }
    }

    private List<Segment> segments(Edge... edges) {
        return Arrays.stream(edges).map(edge -> view.onPage(edge.segment())).toList();
    }
}
