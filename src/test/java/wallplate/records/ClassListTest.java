package wallplate.records;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ClassListTest {

    @Test
    void readsOneNameALineAndPassesOverEmptyLines() {
        assertThat(ClassList.read("Ada Nkosi\n\n  Bo Lind  \r\n"))
                .containsExactly(new ClassListEntry("Ada Nkosi", ""), new ClassListEntry("Bo Lind", ""));
    }

    @Test
    void readsACandidateNumberAfterCommaSemicolonOrTab() {
        assertThat(ClassList.read("Ada,17\nBo;18\nCem\t19"))
                .containsExactly(
                        new ClassListEntry("Ada", "17"), new ClassListEntry("Bo", "18"), new ClassListEntry("Cem", "19"));
    }

    @Test
    void takesColumnsByTheirHeading() {
        assertThat(ClassList.read("\uFEFFcandidate number;learner name\n17;Ada\n18;Bo"))
                .containsExactly(new ClassListEntry("Ada", "17"), new ClassListEntry("Bo", "18"));
    }

    /** RFC 4180, section 2, rules 6 and 7: quoted fields may hold commas and doubled quotes. */
    @Test
    void readsQuotedFields() {
        assertThat(ClassList.read("\"Lind, Bo \"\"B\"\"\",7")).containsExactly(new ClassListEntry("Lind, Bo \"B\"", "7"));
    }

    @Test
    void findsNobodyInAnEmptyText() {
        assertThat(ClassList.read(" \n\n")).isEmpty();
    }
}
