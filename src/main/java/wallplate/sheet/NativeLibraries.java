package wallplate.sheet;

import wallplate.sheet.opencv.OpenCv;

/** Loads the native picture library once for the whole program; every class that uses it calls this first. */
public final class NativeLibraries {

    private NativeLibraries() {}

    /** Makes the native picture library ready; a later call costs nothing. */
    public static void load() {
        OpenCv.load();
    }
}
