package wallplate.measure;

import java.util.Map;
import java.util.Optional;

/** One way to read a place on the drawing. */
interface Reading {

    /** The sizes that it would give, by key, in millimetres; empty where it says that the part was not drawn. */
    Map<String, Optional<Double>> sizes();
}
