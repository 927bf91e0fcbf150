package wallplate.operations;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import wallplate.task.DrawingTask;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** The project's own sheets, as many different files as are wanted. */
final class SampleScans {

    private static final Path FOLDER = Path.of("sample-scans");
    private final List<byte[]> scans;

    private SampleScans(List<byte[]> scans) {
        this.scans = scans;
    }

    static SampleScans read() throws IOException {
        try (Stream<Path> all = Files.list(FOLDER)) {
            List<byte[]> scans = new java.util.ArrayList<>();
            for (Path path : all.filter(path -> path.toString().endsWith(".jpg")).sorted().toList()) {
                scans.add(Files.readAllBytes(path));
            }
            return new SampleScans(scans);
        }
    }

    static DrawingTask task() throws IOException {
        return ((TaskReading.Accepted) TaskFile.read(Files.readString(FOLDER.resolve("task.yml")))).task();
    }

    /** So many scans, from a number on. */
    List<byte[]> scans(int from, int many) {
        return IntStream.range(from, from + many).mapToObj(this::scan).toList();
    }

    /** The same few pictures in other bytes: a comment segment (ITU-T T.81, B.2.4.5) after the start of the image. */
    byte[] scan(int number) {
        return numbered(scans.get(number % scans.size()), number);
    }

    /** The same picture in other bytes. */
    static byte[] numbered(byte[] jpeg, int number) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(jpeg, 0, 2);
        out.writeBytes(ByteBuffer.allocate(8).put((byte) 0xff).put((byte) 0xfe).putShort((short) 6).putInt(number).array());
        out.write(jpeg, 2, jpeg.length - 2);
        return out.toByteArray();
    }
}
