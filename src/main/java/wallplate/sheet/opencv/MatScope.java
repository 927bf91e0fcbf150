package wallplate.sheet.opencv;

import java.util.ArrayList;
import java.util.List;
import org.opencv.core.Mat;

/** Releases every matrix that was made in it when it is closed: the garbage collector does not see their size. */
final class MatScope implements AutoCloseable {

    private final List<Mat> matrices = new ArrayList<>();

    MatScope() {
        OpenCv.load();
    }

    /** A new empty matrix that this scope releases. */
    Mat matrix() {
        return keep(new Mat());
    }

    /** Makes this scope release the given matrix too. */
    <M extends Mat> M keep(M matrix) {
        matrices.add(matrix);
        return matrix;
    }

    @Override
    public void close() {
        for (Mat matrix : matrices) {
            matrix.release();
        }
    }
}
