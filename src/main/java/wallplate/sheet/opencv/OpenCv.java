package wallplate.sheet.opencv;

import org.bytedeco.javacpp.Loader;
import org.bytedeco.opencv.opencv_java;
import org.opencv.core.Core;

/** The native library behind {@code org.opencv}, loaded when this class is first used. */
public final class OpenCv {

    static {
        Loader.load(opencv_java.class);
        // Pages are worked on side by side by the program's own threads; the library's would only compete with them.
        // The setting must not be changed while the library is in use, so it is made here and nowhere else.
        Core.setNumThreads(1);
    }

    private OpenCv() {}

    /** Loads the library if it is not loaded yet. */
    public static void load() {
        // The work is done by the static initialiser, once and safely for all threads.
    }
}
