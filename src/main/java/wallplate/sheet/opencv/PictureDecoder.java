package wallplate.sheet.opencv;

import java.util.Optional;
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
        MatOfByte encoded = new MatOfByte(content);
        Mat grey = Imgcodecs.imdecode(encoded, Imgcodecs.IMREAD_GRAYSCALE);
        try {
            if (grey.empty()) {
                return Optional.empty();
            }
            byte[] bytes = new byte[grey.rows() * grey.cols()];
            grey.get(0, 0, bytes);
            return Optional.of(new Picture(grey.cols(), grey.rows(), bytes, 0, 0));
        } finally {
            encoded.release();
            grey.release();
        }
    }
}
