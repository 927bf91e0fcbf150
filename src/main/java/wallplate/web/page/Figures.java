package wallplate.web.page;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.springframework.stereotype.Component;
import wallplate.statistics.AgreementBand;
import wallplate.statistics.Estimate;
import wallplate.statistics.IntraclassCorrelation;
import wallplate.statistics.Interval;
import wallplate.statistics.Kappa;
import wallplate.statistics.PairedDifference;
import wallplate.statistics.Statistic;

/** Statistics in figures and words; what cannot be told says why. */
@Component("figures")
public class Figures {

    private final Words words;

    Figures(Words words) {
        this.words = words;
    }

    /** A figure to two places, or why there is none. */
    public String plain(Statistic<Double> statistic) {
        return say(statistic, this::figure);
    }

    public String kappa(Statistic<Kappa> statistic) {
        return say(statistic, kappa -> with(kappa.value(), kappa.interval()));
    }

    public String correlation(Statistic<IntraclassCorrelation> statistic) {
        return say(statistic, correlation -> estimate(correlation.estimate()));
    }

    public String estimate(Statistic<Estimate> statistic) {
        return say(statistic, this::estimate);
    }

    private String estimate(Estimate estimate) {
        return with(estimate.value(), estimate.interval());
    }

    /** The mean difference with its interval, such as +0.5 (−0.1 to +1.1). */
    public String difference(Statistic<PairedDifference> statistic) {
        return say(
                statistic,
                found -> signed(found.mean()) + (found.standardDeviation() == 0 ? "" : range(found.interval())));
    }

    public String limits(Statistic<PairedDifference> statistic) {
        return say(statistic, found -> signed(found.limits().lower()) + " to " + signed(found.limits().upper()));
    }

    /** The word for a kappa; empty where there is none. */
    public String kappaWord(Statistic<Kappa> statistic) {
        return word(statistic.told().map(kappa -> AgreementBand.ofKappa(kappa.value())));
    }

    public String correlationWord(Statistic<IntraclassCorrelation> statistic) {
        return word(statistic.told().map(found -> AgreementBand.ofCorrelation(found.estimate().value())));
    }

    private String figure(double value) {
        return value < 0 ? signed(value) : words.marks(value);
    }

    /** A number with its sign; 0 has none. */
    public String signed(double value) {
        String figures = words.marks(Math.abs(value));
        return figures.equals("0") ? "0" : (value > 0 ? "+" : "−") + figures;
    }

    public String percent(double part) {
        return Math.round(100 * part) + " %";
    }

    /** A part as percent; empty where it is not known. */
    public String percent(OptionalDouble part) {
        return part.isPresent() ? percent(part.getAsDouble()) : "";
    }

    private String with(double value, Statistic<Interval> interval) {
        return figure(value)
                + interval.told()
                        .map(found -> " (" + figure(found.lower()) + " to " + figure(found.upper()) + ")")
                        .orElse("");
    }

    private String range(Interval interval) {
        return " (" + signed(interval.lower()) + " to " + signed(interval.upper()) + ")";
    }

    private static String word(Optional<AgreementBand> band) {
        return band.map(AgreementBand::word).orElse("");
    }

    private static <V> String say(Statistic<V> statistic, Function<V, String> words) {
        return statistic.told().map(words).orElseGet(() -> "cannot be told: " + statistic.because());
    }
}
