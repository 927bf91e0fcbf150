package wallplate.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The scans that the arguments name, folders opened.
 *
 * @param files in the order of the arguments, a folder's files by name
 * @param faults arguments that lead nowhere
 * @param passedOver what was passed over in folders
 */
record ScanArguments(List<Path> files, List<String> faults, List<Path> passedOver) {

    /** The endings taken from a folder; a file that is named itself is taken whatever its ending. */
    private static final Set<String> ENDINGS =
            Set.of("png", "jpg", "jpeg", "tif", "tiff", "pdf", "bmp", "webp", "zip", "heic", "heif");

    ScanArguments {
        files = List.copyOf(files);
        faults = List.copyOf(faults);
        passedOver = List.copyOf(passedOver);
    }

    static ScanArguments of(List<Path> arguments) throws IOException {
        List<Path> files = new ArrayList<>();
        List<String> faults = new ArrayList<>();
        List<Path> passedOver = new ArrayList<>();
        for (Path argument : arguments) {
            if (Files.isDirectory(argument)) {
                open(argument, files, faults, passedOver);
            } else if (Files.isRegularFile(argument)) {
                files.add(argument);
            } else {
                faults.add("SCAN: %s is not there; accepted: a scan file or a folder of scans".formatted(argument));
            }
        }
        return new ScanArguments(files, faults, passedOver);
    }

    private static void open(Path folder, List<Path> files, List<String> faults, List<Path> passedOver)
            throws IOException {
        List<Path> inside = visibleFiles(folder);
        List<Path> taken = inside.stream().filter(ScanArguments::hasScanEnding).toList();
        files.addAll(taken);
        if (taken.isEmpty()) {
            faults.add("SCAN: the folder %s holds no scans; accepted: a folder of PNG, JPEG, TIFF or PDF files"
                    .formatted(folder));
        }
        inside.stream()
                .filter(file -> !hasScanEnding(file))
                .forEach(passedOver::add);
    }

    private static List<Path> visibleFiles(Path folder) throws IOException {
        try (Stream<Path> inside = Files.list(folder)) {
            return inside.filter(Files::isRegularFile)
                    .filter(file -> !file.getFileName().toString().startsWith("."))
                    .sorted(Comparator.comparing(file -> file.getFileName().toString()))
                    .toList();
        }
    }

    private static boolean hasScanEnding(Path file) {
        String name = file.getFileName().toString();
        return ENDINGS.contains(name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT));
    }
}
