package wallplate.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wallplate.sheet.SheetCode;

/** Whose sheet is whose, by code, by file name, in order. */
class SheetMatchingTest {

    private static final String TASK = "lookout-eaves";

    private final List<Learner> learners = List.of(
            learner(1, "Ada Nkosi", "4101"),
            learner(2, "Bo Lind", ""),
            learner(3, "Zoë Álvarez", "4103"),
            learner(4, "Bo Lind-Roche", "12"));

    @ParameterizedTest
    @CsvSource({
        "scan 4101.pdf, 1",
        "nkosi_ada.jpg, 1",
        "AdaNkosi-section.png, 1",
        "4103 eaves.tif, 3",
        "zoe alvarez.jpg, 3",
        "bo lind.jpg, 2",
        "Bo Lind-Roche.jpg, 4",
        "scan-12.png, 0",
        "x41013.png, 0",
        "ada.png, 0",
        "IMG_0001.jpg, 0"
    })
    void findsALearnerInAFileName(String fileName, long learner) {
        Optional<Learner> found = new FileNames(learners).learnerIn(fileName);

        assertThat(found.map(Learner::id).orElse(0L)).isEqualTo(learner);
    }

    @Test
    void trustsTheHandThenTheCodeThenTheNameThenTheOrder() {
        List<SheetMatching.Match> matches = matching(
                        hand(1, 4),
                        sheet(2, "nkosi ada.png", code(TASK, "4103")),
                        sheet(3, "bo lind.png", Optional.empty()),
                        sheet(4, "scan.png", Optional.empty()))
                .matches();

        assertThat(matches).extracting(match -> match.learnerId().orElse(0L)).containsExactly(4L, 3L, 2L, 1L);
        assertThat(matches)
                .extracting(SheetMatching.Match::by)
                .containsExactly(MatchedBy.HAND, MatchedBy.CODE, MatchedBy.FILE_NAME, MatchedBy.ORDER);
    }

    @Test
    void leavesTheSecondSheetOfALearnerToAPerson() {
        SheetMatching matching = matching(
                sheet(1, "a.png", code(TASK, "L2")), sheet(2, "b.png", code(TASK, "L2")), sheet(3, "c.png", Optional.empty()));

        assertThat(matching.matches())
                .extracting(match -> match.learnerId().orElse(0L))
                .containsExactly(2L, 0L, 3L);
        assertThat(matching.said(2)).contains(learners.get(1));
        assertThat(matching.said(3)).isEmpty();
    }

    @Test
    void takesNothingFromTheCodeOfAnotherTaskOrOfNobody() {
        List<SheetMatching.Match> matches = matching(
                        sheet(1, "a.png", code("other-task", "L4")),
                        sheet(2, "b.png", code(TASK, "")),
                        sheet(3, "c.png", code(TASK, "L99")))
                .matches();

        assertThat(matches).allMatch(match -> match.by() == MatchedBy.ORDER);
        assertThat(matches).extracting(match -> match.learnerId().orElse(0L)).containsExactly(1L, 2L, 3L);
    }

    @Test
    void takesNothingFromANameThatStandsInManyFiles() {
        List<SheetMatching.Match> matches = matching(
                        sheet(1, "Bo Lind 1.png", Optional.empty()),
                        sheet(2, "Bo Lind 2.png", Optional.empty()),
                        sheet(3, "Bo Lind 3.png", Optional.empty()))
                .matches();

        assertThat(matches).extracting(match -> match.learnerId().orElse(0L)).containsExactly(1L, 2L, 3L);
    }

    @Test
    void goesOnAfterTheSheetBeforeAndFromTheStartAgain() {
        List<SheetMatching.Match> matches = matching(
                        sheet(1, "a.png", Optional.empty()),
                        hand(2, 3),
                        sheet(3, "c.png", Optional.empty()),
                        sheet(4, "d.png", Optional.empty()),
                        sheet(5, "e.png", Optional.empty()))
                .matches();

        assertThat(matches).extracting(match -> match.learnerId().orElse(0L)).containsExactly(1L, 3L, 4L, 2L, 0L);
    }

    @Test
    void namesALearnerInACodeByTheNumberWhereItFits() {
        assertThat(learners).extracting(Learner::sheetCode).containsExactly("4101", "L2", "4103", "12");
        assertThat(learner(5, "Eva", "L7").sheetCode()).isEqualTo("L5");
        assertThat(learner(6, "Fay", "10 B/6").sheetCode()).isEqualTo("L6");
    }

    private SheetMatching matching(SheetMatching.Pile... pile) {
        return new SheetMatching(TASK, learners, new ArrayList<>(List.of(pile)));
    }

    private static Learner learner(int position, String name, String number) {
        return new Learner(position, position, name, number);
    }

    private static SheetMatching.Pile sheet(long id, String fileName, Optional<SheetCode> code) {
        return new SheetMatching.Pile(id, fileName, code, false, Optional.empty());
    }

    private static SheetMatching.Pile hand(long id, long learner) {
        return new SheetMatching.Pile(id, "scan.png", Optional.empty(), true, Optional.of(learner));
    }

    private static Optional<SheetCode> code(String task, String learner) {
        return Optional.of(new SheetCode(task, learner, 1));
    }
}
