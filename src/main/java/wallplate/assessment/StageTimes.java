package wallplate.assessment;

import java.time.Duration;

/** Is told how long each stage of an assessment took. */
public interface StageTimes {

    /** Tells nobody. */
    StageTimes UNTOLD = (stage, time) -> {};

    /** The steps from a page's picture to its marks, in their order. */
    enum Stage {
        /** Finding the sheet in the picture, straightening and calibrating it. */
        LEVEL,
        MEASURE,
        MARK
    }

    void took(Stage stage, Duration time);
}
