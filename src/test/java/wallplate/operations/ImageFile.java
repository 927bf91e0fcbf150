package wallplate.operations;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** The steps by which the program's image is built, read from the file that describes them. */
record ImageFile(List<String> lines) {

    static ImageFile read() throws IOException {
        return new ImageFile(
                Arrays.asList(Files.readString(Path.of("Dockerfile")).replace("\\\n", " ").split("\n")));
    }

    /** What the build takes from this repository. */
    List<String> sources() {
        return lines.stream()
                .filter(line -> line.startsWith("COPY ") && !line.contains("--from="))
                .map(line -> line.split("\\s+")[1])
                .toList();
    }

    /** The command that builds the program. */
    List<String> build() {
        String run = lines.stream().filter(line -> line.contains(" mvn ")).findFirst().orElseThrow();
        return Arrays.asList(run.substring(run.indexOf(" mvn ") + 1).strip().split("\\s+"));
    }

    /** Where the build leaves the program, below its own folder. */
    Path built() {
        String copied = lines.stream().filter(line -> line.startsWith("COPY --from=build")).findFirst().orElseThrow();
        return Path.of(copied.split("\\s+")[2].replaceFirst("^/source/", ""));
    }

    String javaOptions() {
        String set = lines.stream().filter(line -> line.startsWith("ENV JAVA_TOOL_OPTIONS")).findFirst().orElseThrow();
        return set.substring(set.indexOf('"') + 1, set.lastIndexOf('"'));
    }
}
