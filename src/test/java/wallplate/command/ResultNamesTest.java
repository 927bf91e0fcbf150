package wallplate.command;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** How result files are named. */
class ResultNamesTest {

    private final ResultNames names = new ResultNames();

    @Test
    void takesTheNameOfTheScanWithoutItsEnding() {
        assertThat(names.forPage("sheet-07.png", 1, false).name()).isEqualTo("sheet-07");
        assertThat(names.forPage("class.10.b.tiff", 1, false).name()).isEqualTo("class.10.b");
        assertThat(names.forPage("sheet", 1, false).name()).isEqualTo("sheet");
    }

    @Test
    void addsThePageWhereAFileHasSeveral() {
        assertThat(names.forPage("set.pdf", 1, true).name()).isEqualTo("set-p1");
        assertThat(names.forPage("set.pdf", 2, true).name()).isEqualTo("set-p2");
    }

    @Test
    void numbersSheetsThatWouldShareAName() {
        assertThat(names.forPage("a.png", 1, false)).isEqualTo(new ResultNames.ResultName("a", false));
        assertThat(names.forPage("a.jpg", 1, false)).isEqualTo(new ResultNames.ResultName("a-2", true));
        assertThat(names.forPage("a-2.png", 1, false)).isEqualTo(new ResultNames.ResultName("a-2-2", true));
        assertThat(names.forPage("A.tif", 1, false)).isEqualTo(new ResultNames.ResultName("A-3", true));
    }

    @Test
    void keepsNamesInsideTheFolder() {
        assertThat(names.forPage("../../up.png", 1, false).name()).isEqualTo("up");
        assertThat(names.forPage("..\\up2.png", 1, false).name()).isEqualTo("up2");
    }
}
