package wallplate.handouts;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;
import wallplate.assessment.AssessedSheet;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;
import wallplate.marking.MarkedSheet;
import wallplate.records.ClassSet;
import wallplate.records.KeptAssessment;
import wallplate.records.PageFacts;
import wallplate.records.ScanStore;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;
import wallplate.report.FeedbackReport;
import wallplate.report.PagePicture;
import wallplate.report.ResultFile;
import wallplate.sheet.InkImage;
import wallplate.sheet.LevelPage;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;

/** Puts kept sheets together again, with the marks as they stand, for everything that is handed out. */
@Component
public class SheetDocuments {

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private final Sheets sheets;
    private final ScanStore store;

    SheetDocuments(Sheets sheets, ScanStore store) {
        this.sheets = sheets;
        this.store = store;
    }

    /** The sheet with its picture, its marks in the words of a language. */
    public AssessedSheet withPicture(ClassSet classSet, SheetEntry sheet, Locale language) throws IOException {
        if (sheet.state() != SheetState.READ) {
            return unread(classSet, sheet);
        }
        KeptAssessment kept = sheets.assessment(sheet.id()).orElseThrow().inWords(language, classSet.task());
        try (InputStream png = store.open(sheet.pagePicture().orElseThrow())) {
            return read(classSet, sheet, kept, PagePicture.read(png.readAllBytes(), kept.page().pixelsPerMm()));
        }
    }

    /** The sheet with an empty picture, its marks in the words of a language. */
    public AssessedSheet withoutPicture(ClassSet classSet, SheetEntry sheet, Locale language) {
        if (sheet.state() != SheetState.READ) {
            return unread(classSet, sheet);
        }
        KeptAssessment kept = sheets.assessment(sheet.id()).orElseThrow().inWords(language, classSet.task());
        return read(classSet, sheet, kept, new InkImage(1, 1, kept.page().pixelsPerMm(), new byte[1]));
    }

    /** The sheet with an empty picture, for lists of marks. */
    public AssessedSheet withoutPicture(ClassSet classSet, SheetEntry sheet) {
        if (sheet.state() != SheetState.READ) {
            return unread(classSet, sheet);
        }
        KeptAssessment kept = sheets.assessment(sheet.id()).orElseThrow();
        return read(classSet, sheet, kept, new InkImage(1, 1, kept.page().pixelsPerMm(), new byte[1]));
    }

    /** The feedback report of a sheet in a language, with the marks as they stand. */
    public byte[] feedback(ClassSet classSet, SheetEntry sheet, Locale language) throws IOException {
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        new FeedbackReport(language).write(sheet.label(), withPicture(classSet, sheet, language), pdf);
        return pdf.toByteArray();
    }

    /** The result file with the marks as they stand; empty while the sheet has not been looked at. */
    public Optional<String> result(ClassSet classSet, SheetEntry sheet) {
        Optional<String> kept = sheets.resultJson(sheet.id());
        return sheet.state() == SheetState.READ ? kept.map(json -> withStandingMarks(json, classSet, sheet)) : kept;
    }

    /** Evidence stays as it was written when the scan was at hand; marks and total are those of now. */
    private String withStandingMarks(String json, ClassSet classSet, SheetEntry sheet) {
        ObjectNode kept = (ObjectNode) JSON.readTree(json);
        JsonNode standing = JSON.readTree(ResultFile.write(withoutPicture(classSet, sheet)));
        for (String marked : List.of("guideline", "marks", "groups", "total")) {
            kept.set(marked, standing.get(marked));
        }
        return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(kept) + "\n";
    }

    private AssessedSheet.Unreadable unread(ClassSet classSet, SheetEntry sheet) {
        ExpectedDrawing expected = Solver.solve(classSet.task());
        return new AssessedSheet.Unreadable(
                sheet.fileName(), sheet.page(), expected, sheet.reason().orElse("This sheet has not been read yet."));
    }

    /** The sheet with the marks as the guideline gave them. */
    public AssessedSheet.Read asRead(ClassSet classSet, SheetEntry sheet, KeptAssessment kept, InkImage ink) {
        return read(classSet, sheet, kept, ink, kept.marked());
    }

    private AssessedSheet.Read read(ClassSet classSet, SheetEntry sheet, KeptAssessment kept, InkImage ink) {
        return read(classSet, sheet, kept, ink, kept.markedAs(sheets.marks(sheet.id())));
    }

    private static AssessedSheet.Read read(
            ClassSet classSet, SheetEntry sheet, KeptAssessment kept, InkImage ink, MarkedSheet marked) {
        PageFacts facts = kept.page();
        LevelPage page = new LevelPage(
                ink,
                new LevelPicture(facts.heightPx(), facts.pixelsPerMm()),
                facts.scanPixelsPerMm(),
                facts.rotationDegrees(),
                facts.photograph(),
                facts.calibration(),
                facts.bar(),
                facts.warnings());
        return new AssessedSheet.Read(
                sheet.fileName(),
                sheet.page(),
                Solver.solve(classSet.task()),
                page,
                kept.measured(),
                marked);
    }

    /** From page millimetres to pixels of the level picture, which is the scan that is at hand here. */
    private record LevelPicture(int heightPx, double pixelsPerMm) implements PlaneMap {

        @Override
        public Point apply(Point point) {
            return new Point(point.x() * pixelsPerMm, heightPx - point.y() * pixelsPerMm);
        }

        @Override
        public PlaneMap inverse() {
            LevelPicture there = this;
            return new PlaneMap() {
                @Override
                public Point apply(Point pixel) {
                    return new Point(pixel.x() / pixelsPerMm, (heightPx - pixel.y()) / pixelsPerMm);
                }

                @Override
                public PlaneMap inverse() {
                    return there;
                }
            };
        }
    }
}
