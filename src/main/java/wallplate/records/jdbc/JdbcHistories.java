package wallplate.records.jdbc;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.Histories;
import wallplate.records.Learner;
import wallplate.records.LearnerHistory;
import wallplate.records.Sheets;

@Repository
class JdbcHistories implements Histories {

    private final JdbcClient database;
    private final ClassSets classSets;
    private final Sheets sheets;

    JdbcHistories(JdbcClient database, ClassSets classSets, Sheets sheets) {
        this.database = database;
        this.classSets = classSets;
        this.sheets = sheets;
    }

    private record Listed(Learner learner, String className) {}

    private record SheetOfSet(long classSetId, long sheetId) {}

    @Override
    public Optional<LearnerHistory> of(long learnerId) {
        return listed(learnerId).map(listed -> {
            boolean byNumber = !listed.learner().candidateNumber().isBlank();
            List<SheetOfSet> found = byNumber
                    ? byNumber(listed.learner().candidateNumber())
                    : byName(listed.learner().name(), listed.className());
            List<LearnerHistory.Entry> entries = found.stream()
                    .flatMap(this::entry)
                    .sorted(Comparator.comparing((LearnerHistory.Entry entry) -> entry.classSet().createdAt())
                            .thenComparing(entry -> entry.classSet().id()))
                    .toList();
            return new LearnerHistory(listed.learner(), listed.className(), byNumber, entries);
        });
    }

    private Optional<Listed> listed(long learnerId) {
        return database.sql(
                        """
                        select l.id, l.position, l.name, l.candidate_number, c.name as class_name
                        from learners l join school_classes c on c.id = l.class_id where l.id = ?""")
                .param(learnerId)
                .query((row, number) -> new Listed(
                        new Learner(
                                row.getLong("id"),
                                row.getInt("position"),
                                row.getString("name"),
                                Rows.optionalText(row, "candidate_number").orElse("")),
                        row.getString("class_name")))
                .optional();
    }

    private List<SheetOfSet> byNumber(String candidateNumber) {
        return database.sql(
                        """
                        select s.class_set_id, s.id from sheets s join learners l on l.id = s.learner_id
                        where l.candidate_number = ?""")
                .param(candidateNumber)
                .query((row, number) -> new SheetOfSet(row.getLong("class_set_id"), row.getLong("id")))
                .list();
    }

    private List<SheetOfSet> byName(String name, String className) {
        return database.sql(
                        """
                        select s.class_set_id, s.id
                        from sheets s join learners l on l.id = s.learner_id join school_classes c on c.id = l.class_id
                        where l.name = ? and c.name = ?""")
                .params(name, className)
                .query((row, number) -> new SheetOfSet(row.getLong("class_set_id"), row.getLong("id")))
                .list();
    }

    private Stream<LearnerHistory.Entry> entry(SheetOfSet found) {
        ClassSet classSet = classSets.find(found.classSetId()).orElseThrow();
        return sheets.find(found.sheetId()).map(sheet -> new LearnerHistory.Entry(classSet, sheet)).stream();
    }
}
