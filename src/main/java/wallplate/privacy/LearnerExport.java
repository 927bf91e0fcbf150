package wallplate.privacy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.springframework.stereotype.Service;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import wallplate.handouts.SheetDocuments;
import wallplate.marksheets.MarkSheet;
import wallplate.marksheets.MarkSheetBook;
import wallplate.privacy.PersonalRecords.PersonalLine;
import wallplate.privacy.PersonalRecords.PersonalSheet;
import wallplate.privacy.PersonalRecords.Stay;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.HomeChecks;
import wallplate.records.MarkEntry;
import wallplate.records.ScanStore;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.tables.Cell;
import wallplate.tables.Table;
import wallplate.tables.TableFile;

/**
 * Everything that is kept about one learner in one ZIP file: who and in which classes (JSON), sheets, marks, mark sheets and checks at home (CSV), and for
 * each sheet its result file, feedback, page and scan.
 *
 * <p>A scan that holds sheets of others too is not in it; the page of the learner's own sheet is.
 */
@Service
public class LearnerExport {

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private final PersonalRecords records;
    private final ClassSets classSets;
    private final Sheets sheets;
    private final MarkSheetBook book;
    private final HomeChecks homeChecks;
    private final SheetDocuments documents;
    private final ScanStore store;

    LearnerExport(
            PersonalRecords records,
            ClassSets classSets,
            Sheets sheets,
            MarkSheetBook book,
            HomeChecks homeChecks,
            SheetDocuments documents,
            ScanStore store) {
        this.records = records;
        this.classSets = classSets;
        this.sheets = sheets;
        this.book = book;
        this.homeChecks = homeChecks;
        this.documents = documents;
        this.store = store;
    }

    /** Hears how far the file is. */
    public interface Progress {
        void at(int done, int sheets);
    }

    /** A sheet as the records have it, with whose file it is. */
    private record Own(PersonalSheet found, ClassSet classSet, SheetEntry sheet, List<MarkEntry> marks) {

        String folder() {
            return "sheets/%d/".formatted(sheet.id());
        }
    }

    /** Writes the file, feedback in a language. */
    public void write(long learnerId, Locale language, Progress progress, OutputStream out) throws IOException {
        List<Stay> stays = records.stays(learnerId);
        List<Own> own = records.sheets(stays).stream().map(this::own).toList();
        ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
        put(zip, "learner.json", learner(stays).getBytes(StandardCharsets.UTF_8));
        put(zip, "sheets.csv", csv(sheets(own)));
        put(zip, "marks.csv", csv(marks(own)));
        put(zip, "mark-sheets.csv", csv(markSheets(records.lines(stays))));
        put(zip, "checks-at-home.csv", csv(homeChecks(stays)));
        for (int done = 0; done < own.size(); done++) {
            progress.at(done, own.size());
            put(zip, own.get(done), language);
        }
        zip.finish();
    }

    private Own own(PersonalSheet found) {
        return new Own(
                found,
                classSets.find(found.classSetId()).orElseThrow(),
                sheets.find(found.sheetId()).orElseThrow(),
                sheets.marks(found.sheetId()));
    }

    private void put(ZipOutputStream zip, Own own, Locale language) throws IOException {
        Optional<String> result = documents.result(own.classSet(), own.sheet());
        if (result.isPresent()) {
            put(zip, own.folder() + "result.json", result.get().getBytes(StandardCharsets.UTF_8));
        }
        if (own.sheet().state().isFinished()) {
            put(zip, own.folder() + "feedback.pdf", documents.feedback(own.classSet(), own.sheet(), language));
        }
        if (own.sheet().pagePicture().isPresent()) {
            putContent(zip, own.folder() + "page.png", own.sheet().pagePicture().get());
        }
        if (own.found().hasScan() && own.found().otherSheets() == 0) {
            putContent(zip, own.folder() + "scan" + ending(own.found().fileName()), own.found().contentHash());
        }
    }

    private static String ending(String fileName) {
        String ending = fileName.substring(Math.max(fileName.lastIndexOf('.'), 0)).toLowerCase(Locale.ROOT);
        return ending.matches("\\.[a-z]{3,4}") ? ending : "";
    }

    private static void put(ZipOutputStream zip, String name, byte[] content) throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(content);
        zip.closeEntry();
    }

    private void putContent(ZipOutputStream zip, String name, String content) throws IOException {
        try (InputStream stream = store.open(content)) {
            zip.putNextEntry(new ZipEntry(name));
            stream.transferTo(zip);
            zip.closeEntry();
        } catch (NoSuchFileException gone) {
            put(zip, name + ".missing.txt", "This content is no longer in the scan store.\n".getBytes(StandardCharsets.UTF_8));
        }
    }

    private static String learner(List<Stay> stays) {
        ObjectNode learner = JSON.createObjectNode();
        ArrayNode classes = learner.putArray("classes");
        stays.forEach(stay -> {
            ObjectNode one = classes.addObject();
            one.put("name", stay.name());
            one.put("candidateNumber", stay.candidateNumber());
            one.put("class", stay.className());
            one.put("schoolYear", stay.schoolYear());
            one.put("placeInTheList", stay.position());
            one.put("from", stay.joinedAt().toString());
            stay.leftAt().ifPresent(left -> one.put("to", left.toString()));
        });
        return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(learner) + "\n";
    }

    private static byte[] csv(Table table) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        TableFile.writeCsv(table, out);
        return out.toByteArray();
    }

    private static Table sheets(List<Own> own) {
        return new Table(
                "sheets",
                List.of("sheet", "class set", "task", "file", "page", "printed code", "state", "marks", "of", "read at", "looked at"),
                own.stream()
                        .map(one -> List.of(
                                Cell.of(one.sheet().id()),
                                Cell.of(one.classSet().title()),
                                Cell.of(one.classSet().task().title()),
                                Cell.of(one.found().fileName()),
                                Cell.of(one.found().page()),
                                Cell.of(one.found().printedCode().orElse("")),
                                Cell.of(one.sheet().state().word()),
                                Cell.of(BigDecimal.valueOf(one.sheet().awarded())),
                                Cell.of(BigDecimal.valueOf(one.sheet().available())),
                                Cell.of(one.sheet().assessedAt().map(Object::toString).orElse("")),
                                Cell.of(one.sheet().checkedAt().map(Object::toString).orElse(""))))
                        .toList());
    }

    private static Table marks(List<Own> own) {
        List<List<Cell>> rows = new ArrayList<>();
        own.forEach(one -> one.marks().forEach(mark -> rows.add(List.of(
                Cell.of(one.sheet().id()),
                Cell.of(mark.title()),
                Cell.of(mark.verdict().word()),
                Cell.of(BigDecimal.valueOf(mark.awarded())),
                Cell.of(BigDecimal.valueOf(mark.available())),
                Cell.of(mark.feedback()),
                Cell.of(mark.change().map(change -> change.changedBy()).orElse("")),
                Cell.of(mark.change().map(change -> change.reason()).orElse(""))))));
        return new Table(
                "marks",
                List.of("sheet", "criterion", "verdict", "marks", "of", "feedback", "changed by", "reason of the change"),
                rows);
    }

    private Table homeChecks(List<Stay> stays) {
        List<List<Cell>> rows = new ArrayList<>();
        homeChecks.of(stays.stream().map(Stay::learnerId).toList())
                .forEach(check -> new TreeMap<>(check.verdicts())
                        .forEach((criterion, verdict) -> rows.add(List.of(
                                Cell.of(check.keptAt().toString()),
                                Cell.of(check.taskTitle()),
                                Cell.of(criterion),
                                Cell.of(verdict)))));
        return new Table("checks at home", List.of("kept at", "task", "criterion", "verdict"), rows);
    }

    private Table markSheets(List<PersonalLine> lines) {
        List<List<Cell>> rows = new ArrayList<>();
        for (PersonalLine line : lines) {
            book.find(line.markSheetId()).ifPresent(sheet -> rows.addAll(rows(sheet, line.line())));
        }
        return new Table(
                "mark sheets",
                List.of("mark sheet", "term", "school year", "name", "number", "task", "standing", "marks", "of", "percent of the mark sheet"),
                rows);
    }

    private static List<List<Cell>> rows(MarkSheet sheet, int number) {
        List<List<Cell>> rows = new ArrayList<>();
        sheet.lines().stream().filter(line -> line.number() == number).forEach(line -> {
            Cell percent = sheet.result(line).percentage().map(Cell::of).orElseGet(() -> Cell.of(""));
            sheet.columns().forEach(column -> {
                var entry = line.entries().get(column.place() - 1);
                rows.add(List.of(
                        Cell.of(sheet.heading().title()),
                        Cell.of(sheet.heading().term()),
                        Cell.of(sheet.heading().schoolYear()),
                        Cell.of(line.name()),
                        Cell.of(line.candidateNumber()),
                        Cell.of(column.title()),
                        Cell.of(entry.standing().word()),
                        Cell.of(entry.awarded()),
                        Cell.of(entry.available()),
                        percent));
            });
        });
        return rows;
    }

    /** Whether there is such a learner. */
    public boolean isThere(long learnerId) {
        return !records.stays(learnerId).isEmpty();
    }
}
