package wallplate.moderation;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import wallplate.moderation.SamplingRule.Choice;

/** Draws a sample; the same rule and the same candidates in any order give the same sheets in the same order. */
public final class Sampling {

    private Sampling() {}

    /** The ids of the sheets drawn, in the order in which they are marked, which tells nothing about their marks. */
    public static List<Long> draw(SamplingRule rule, List<Candidate> candidates) {
        Random chance = new Random(rule.seed());
        List<Candidate> shuffled = new ArrayList<>(candidates);
        shuffled.sort(Comparator.comparingLong(Candidate::sheetId));
        Collections.shuffle(shuffled, chance);
        int size = rule.size().of(candidates.size());
        List<Candidate> drawn = rule.choice() == Choice.AT_RANDOM
                ? new ArrayList<>(shuffled.subList(0, size))
                : topMiddleBottom(shuffled, size);
        Collections.shuffle(drawn, chance);
        return drawn.stream().map(Candidate::sheetId).toList();
    }

    /** A sheet over goes to the top, a second one to the bottom; the sort keeps equal totals as they were shuffled. */
    private static List<Candidate> topMiddleBottom(List<Candidate> shuffled, int size) {
        List<Candidate> ranked = shuffled.stream()
                .sorted(Comparator.comparingDouble(Candidate::total).reversed())
                .toList();
        int top = (size + 2) / 3;
        int bottom = (size + 1) / 3;
        int middle = size - top - bottom;
        int between = ranked.size() - top - bottom;
        int firstOfMiddle = top + (between - middle) / 2;
        List<Candidate> drawn = new ArrayList<>(ranked.subList(0, top));
        drawn.addAll(ranked.subList(firstOfMiddle, firstOfMiddle + middle));
        drawn.addAll(ranked.subList(ranked.size() - bottom, ranked.size()));
        return drawn;
    }
}
