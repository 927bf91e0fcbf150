package wallplate.records;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Finds the learner whose candidate number or name stands in a file's name.
 *
 * <p>Capitals, accents and the order of first name and surname do not matter. A number counts as a whole one only, and
 * from three figures on: shorter ones are what scanners count their files with.
 */
final class FileNames {

    private static final int SHORTEST_NUMBER = 3;

    private final List<Known> known;

    /** A learner as words of a file name. */
    private record Known(Learner learner, String number, Set<String> name) {}

    FileNames(List<Learner> learners) {
        this.known = learners.stream()
                .map(learner -> new Known(learner, number(learner.candidateNumber()), Set.copyOf(words(learner.name()))))
                .toList();
    }

    private static String number(String candidateNumber) {
        String number = String.join(" ", words(candidateNumber));
        return number.length() < SHORTEST_NUMBER ? "" : number;
    }

    /** Empty where no learner is named, or several are and none of them more fully than the others. */
    Optional<Learner> learnerIn(String fileName) {
        List<String> words = words(withoutEnding(fileName));
        String line = " " + String.join(" ", words) + " ";
        List<Known> byNumber = known.stream()
                .filter(one -> !one.number().isEmpty() && line.contains(" " + one.number() + " "))
                .toList();
        if (byNumber.size() == 1) {
            return Optional.of(byNumber.get(0).learner());
        }
        List<Known> byName = known.stream()
                .filter(one -> !one.name().isEmpty() && words.containsAll(one.name()))
                .sorted(Comparator.comparingInt((Known one) -> -one.name().size()))
                .toList();
        boolean clear = byName.size() == 1
                || byName.size() > 1 && byName.get(0).name().size() > byName.get(1).name().size();
        return clear ? Optional.of(byName.get(0).learner()) : Optional.empty();
    }

    private static String withoutEnding(String fileName) {
        int dot = fileName.lastIndexOf('.');
        return dot > 0 ? fileName.substring(0, dot) : fileName;
    }

    /** Letters and figures, parted where neither stands and where a small letter meets a capital. */
    private static List<String> words(String text) {
        String plain = Normalizer.normalize(text, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .replaceAll("(?<=\\p{Ll})(?=\\p{Lu})", " ")
                .toLowerCase(Locale.ROOT);
        Set<String> words = new LinkedHashSet<>(Arrays.asList(plain.split("[^\\p{L}\\p{N}]+")));
        words.remove("");
        return List.copyOf(words);
    }
}
