package wallplate.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import wallplate.marking.Verdict;
import wallplate.records.MarkEntry;
import wallplate.records.MatchedBy;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;

class FollowUpGroupTest {

    @Test
    void makesFewGroupsAroundWhatMostMissed() {
        List<FollowUpGroup> groups = FollowUpGroup.of(
                List.of(sheet(1), sheet(2), sheet(3), sheet(4)),
                List.of(
                        missed(1, "gutter.width"),
                        missed(1, "fascia.depth"),
                        missed(2, "fascia.depth"),
                        missed(2, "fascia.thickness"),
                        missed(3, "fascia.depth"),
                        missed(4, "gutter.width")));

        assertThat(groups).extracting(FollowUpGroup::part).containsExactly("fascia", "gutter");
        assertThat(sheets(groups.get(0))).containsExactly(1L, 2L, 3L);
        assertThat(sheets(groups.get(1))).containsExactly(4L);
    }

    @Test
    void saysWhatEachMissedHereAndHowMuchElsewhere() {
        FollowUpGroup.Member member = FollowUpGroup.of(
                        List.of(sheet(1), sheet(2)),
                        List.of(
                                missed(1, "fascia.depth"),
                                missed(1, "fascia.thickness"),
                                missed(1, "gutter.width"),
                                missed(2, "fascia.depth")))
                .get(0)
                .members()
                .get(0);

        assertThat(member.missed()).extracting(MarkEntry::criterion).containsExactly("fascia-depth", "fascia-thickness");
        assertThat(member.elsewhere()).isEqualTo(1);
    }

    @Test
    void leavesOutWhoMissedNothingAndWhatIsNotDecided() {
        List<FollowUpGroup> groups = FollowUpGroup.of(
                List.of(sheet(1), sheet(2)),
                List.of(mark(1, "fascia.depth", Verdict.MET), mark(2, "fascia.depth", Verdict.UNDECIDED)));

        assertThat(groups).isEmpty();
    }

    @Test
    void takesTheCostlierPartWhereAsManyMissedIt() {
        List<FollowUpGroup> groups = FollowUpGroup.of(
                List.of(sheet(1)),
                List.of(missed(1, "gutter.width"), missed(1, "rafter.depth"), missed(1, "rafter.overhang")));

        assertThat(groups).extracting(FollowUpGroup::part).containsExactly("rafter");
    }

    private static List<Long> sheets(FollowUpGroup group) {
        return group.members().stream().map(member -> member.sheet().id()).toList();
    }

    private static MarkEntry missed(long sheet, String key) {
        return mark(sheet, key, Verdict.NOT_MET);
    }

    private static MarkEntry mark(long sheet, String key, Verdict verdict) {
        MarkEntry.Reading reading = new MarkEntry.Reading(
                "mm",
                OptionalDouble.of(10),
                OptionalDouble.of(10),
                Optional.empty(),
                "measured",
                OptionalDouble.of(12),
                OptionalDouble.of(0.1),
                Optional.empty(),
                Optional.empty());
        return new MarkEntry(
                sheet,
                key.replace('.', '-'),
                1,
                key,
                Optional.of(key),
                verdict,
                verdict == Verdict.MET ? 1 : 0,
                1,
                OptionalDouble.of(1),
                reading,
                List.of(),
                "",
                Optional.empty());
    }

    private static SheetEntry sheet(long id) {
        return new SheetEntry(
                id,
                1,
                (int) id,
                "sheet-" + id + ".png",
                1,
                Optional.empty(),
                SheetState.READ,
                Optional.empty(),
                0,
                0,
                0,
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                MatchedBy.ORDER);
    }
}
