package wallplate.web.sets;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.util.unit.DataSize;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseBody;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.sheet.ScanFile;
import wallplate.web.page.NotFound;

/** Scans handed in for a class set: whole from a plain form, in parts from the page's script. */
@Controller
class UploadController {

    private static final String NAME_OF_AN_UPLOAD = "[0-9a-f]{32}";

    private final ClassSets classSets;
    private final Intake intake;
    private final PartedUploads uploads;
    private final DataSize most;

    UploadController(
            ClassSets classSets,
            Intake intake,
            PartedUploads uploads,
            @Value("${spring.servlet.multipart.max-file-size}") DataSize most) {
        this.classSets = classSets;
        this.intake = intake;
        this.uploads = uploads;
        this.most = most;
    }

    @PostMapping("/class-sets/{id}/scans")
    String scans(
            @PathVariable long id,
            @RequestParam(name = "scans", required = false) @Nullable List<MultipartFile> scans,
            RedirectAttributes redirect)
            throws IOException {
        Intake.Receipt receipt = intake.take(found(id), scans == null ? List.of() : scans);
        redirect.addFlashAttribute(receipt.taken().isEmpty() ? "wrong" : "done", receipt.sentence());
        return "redirect:/class-sets/" + id;
    }

    /** How far a file has come that is sent in parts. */
    @GetMapping(path = "/class-sets/{id}/scans/parts", produces = MediaType.APPLICATION_JSON_VALUE)
    @ResponseBody
    PartAnswer received(@PathVariable long id, @RequestParam String upload) {
        PartedUploads.Key key = key(id, upload);
        return uploads.answerOf(key).orElseGet(() -> PartAnswer.more(uploads.received(key)));
    }

    /**
     * A part of a file. A part that does not follow on what is here changes nothing; the answer says from where to go on.
     *
     * @param size of the whole file in bytes
     * @param offset of the part in it
     */
    @PostMapping(path = "/class-sets/{id}/scans/parts", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<PartAnswer> part(
            @PathVariable long id,
            @RequestParam String upload,
            @RequestParam String name,
            @RequestParam long size,
            @RequestParam long offset,
            @RequestParam("part") MultipartFile part)
            throws IOException {
        PartedUploads.Key key = key(id, upload);
        Optional<PartAnswer> ended = uploads.answerOf(key);
        if (ended.isPresent()) {
            return ResponseEntity.ok(ended.get());
        }
        if (size > most.toBytes() || offset + part.getSize() > size) {
            return ResponseEntity.status(HttpStatus.CONTENT_TOO_LARGE)
                    .body(PartAnswer.wrong("too large: a file may have up to " + most.toMegabytes()
                            + " MB. Hand the pile in as several files, or scan at 300 dpi in grey."));
        }
        Optional<String> refusal = offset == 0 ? refusal(part) : Optional.empty();
        if (refusal.isPresent()) {
            return ResponseEntity.status(HttpStatus.UNSUPPORTED_MEDIA_TYPE).body(PartAnswer.wrong(refusal.get()));
        }
        Path file;
        try (InputStream content = part.getInputStream()) {
            file = uploads.add(key, offset, content);
        }
        long received = uploads.received(key);
        if (received < size) {
            return ResponseEntity.ok(PartAnswer.more(received));
        }
        PartAnswer answer = taken(key, name, file, received);
        uploads.end(key, answer);
        return ResponseEntity.ok(answer);
    }

    private static Optional<String> refusal(MultipartFile part) throws IOException {
        try (InputStream content = part.getInputStream()) {
            return ScanFile.refusalOf(content.readNBytes(ScanFile.BYTES_TO_TELL));
        }
    }

    private PartAnswer taken(PartedUploads.Key key, String name, Path file, long received) throws IOException {
        try (InputStream content = Files.newInputStream(file)) {
            boolean isNew = intake.take(found(key.classSetId()), Intake.plainName(name), content);
            return new PartAnswer(received, isNew ? "taken" : "same", "");
        }
    }

    private PartedUploads.Key key(long classSetId, String upload) {
        if (!upload.matches(NAME_OF_AN_UPLOAD)) {
            throw new NotFound("There is no upload of this name.");
        }
        return new PartedUploads.Key(found(classSetId).id(), upload);
    }

    private ClassSet found(long id) {
        return classSets.find(id).orElseThrow(() -> new NotFound("There is no class set " + id + "."));
    }
}
