package wallplate.web.sets;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import wallplate.records.Learner;

/**
 * A learner as typed: the whole name, the candidate number, the place in the class list, or as many first letters of
 * first name or surname as tell the learner from the others.
 *
 * @param learner the one meant; empty where nothing was typed, so that the sheet is nobody's
 * @param fault what is wrong with what was typed, in a sentence
 */
record TypedLearner(Optional<Learner> learner, Optional<String> fault) {

    static TypedLearner of(String typed, List<Learner> learners) {
        String text = plain(typed);
        if (text.isEmpty()) {
            return new TypedLearner(Optional.empty(), Optional.empty());
        }
        List<Predicate<Learner>> ways = List.of(
                learner -> plain(learner.nameAndNumber()).equals(text),
                learner -> plain(learner.name()).equals(text),
                learner -> plain(learner.candidateNumber()).equals(text),
                learner -> Integer.toString(learner.position()).equals(text),
                learner -> plain(learner.name()).startsWith(text) || plain(learner.name()).contains(" " + text));
        for (Predicate<Learner> way : ways) {
            List<Learner> meant = learners.stream().filter(way).toList();
            if (meant.size() == 1) {
                return new TypedLearner(Optional.of(meant.get(0)), Optional.empty());
            }
            if (meant.size() > 1) {
                return wrong("\"%s\" fits %d learners: %s. Type more of the name, or the number."
                        .formatted(typed.strip(), meant.size(), firstOf(meant)));
            }
        }
        return wrong("Nobody in the class list is called \"%s\".".formatted(typed.strip()));
    }

    private static String firstOf(List<Learner> meant) {
        List<String> names = meant.stream().limit(3).map(Learner::nameAndNumber).toList();
        return String.join(", ", names) + (meant.size() > names.size() ? " and others" : "");
    }

    private static TypedLearner wrong(String sentence) {
        return new TypedLearner(Optional.empty(), Optional.of(sentence));
    }

    private static String plain(String text) {
        return text.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }
}
