package wallplate.web.moderation;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LabelPlacesTest {

    @Test
    void standsAtTheUpperRightWhereThatIsFree() {
        Label label = new LabelPlaces().place(100, 100, "3");

        assertThat(label.x()).isGreaterThan(100);
        assertThat(label.y()).isLessThan(100);
    }

    @Test
    void makesWayForDotsAndForOtherLabels() {
        LabelPlaces places = new LabelPlaces();
        places.keepFree(110, 92);

        Label first = places.place(100, 100, "3");
        Label second = places.place(100, 100, "4");

        assertThat(first.x()).as("left of the dot that stands at the upper right").isLessThan(100);
        assertThat(second.y()).as("below, where neither stands").isGreaterThan(first.y() + 10);
    }
}
