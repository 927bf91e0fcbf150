package wallplate.sheet.opencv;

import java.util.Optional;
import org.opencv.core.CvException;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.imgcodecs.Imgcodecs;
import wallplate.sheet.ScanPage.Picture;

/** Decodes a single picture's bytes to grey. */
public final class PictureDecoder {

    static {
        OpenCv.load();
    }

    private PictureDecoder() {}

    /** The picture, turned as its EXIF note asks; empty where the bytes are no picture. */
    public static Optional<Picture> decode(byte[] content) {
        return decode(content, Imgcodecs.IMREAD_GRAYSCALE);
    }

    /** The picture as its rows stand in the file, whatever its EXIF note says; empty where the bytes are no picture. */
    public static Optional<Picture> decodeUnturned(byte[] content) {
        return decode(content, Imgcodecs.IMREAD_GRAYSCALE | Imgcodecs.IMREAD_IGNORE_ORIENTATION);
    }

    private static Optional<Picture> decode(byte[] content, int flags) {
        if (content.length == 0) {
            return Optional.empty();
        }
        MatOfByte encoded = new MatOfByte(content);
        try {
            return grey(Imgcodecs.imdecode(encoded, flags));
        } catch (CvException tooLarge) {
            return Optional.empty();
        } finally {
            encoded.release();
        }
    }

    /** The picture of a matrix, which is released. */
    private static Optional<Picture> grey(Mat grey) {
        try {
            if (grey.empty()) {
                return Optional.empty();
            }
            byte[] bytes = new byte[grey.rows() * grey.cols()];
            grey.get(0, 0, bytes);
            return Optional.of(new Picture(grey.cols(), grey.rows(), bytes, 0, 0));
        } finally {
            grey.release();
        }
    }
}
