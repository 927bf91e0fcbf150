package wallplate.records.jdbc;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import wallplate.ownership.Share;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.Histories;
import wallplate.records.Learner;
import wallplate.records.LearnerHistory;
import wallplate.records.LearnerHistory.MatchedBy;
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

    /**
     * @param number the candidate number, also where it stands in the name's place
     * @param person the same for all entries of one learner in classes of school years; empty in a set's own list
     */
    private record Listed(Learner learner, String className, String name, String number, Optional<Long> person) {}

    private record SheetOfSet(long classSetId, long sheetId) {}

    @Override
    public Optional<LearnerHistory> of(long learnerId, Share share) {
        return listed(learnerId).map(listed -> {
            MatchedBy matchedBy = matchedBy(listed);
            List<SheetOfSet> found =
                    switch (matchedBy) {
                        case CLASSES -> byPerson(listed.person().orElseThrow(), share);
                        case NUMBER -> byNumber(listed.number(), share);
                        case NAME -> byName(listed.name(), listed.className(), share);
                    };
            List<LearnerHistory.Entry> entries = found.stream()
                    .flatMap(this::entry)
                    .sorted(Comparator.comparing((LearnerHistory.Entry entry) -> entry.classSet().createdAt())
                            .thenComparing(entry -> entry.classSet().id()))
                    .toList();
            return new LearnerHistory(listed.learner(), listed.className(), matchedBy, entries);
        });
    }

    private static MatchedBy matchedBy(Listed listed) {
        if (listed.person().isPresent()) {
            return MatchedBy.CLASSES;
        }
        return listed.number().isBlank() ? MatchedBy.NAME : MatchedBy.NUMBER;
    }

    private Optional<Listed> listed(long learnerId) {
        return database.sql(
                        """
                        select l.id as learner_id, l.position as learner_position, %s as learner_name,
                               l.candidate_number, c.name as class_name, l.name as full_name,
                               case when c.school_year is not null then l.person_id end as person
                        from learners l join school_classes c on c.id = l.class_id where l.id = ?"""
                                .formatted(Rows.SHOWN_NAME))
                .param(learnerId)
                .query((row, number) -> new Listed(
                        Rows.learner(row),
                        row.getString("class_name"),
                        row.getString("full_name"),
                        Rows.optionalText(row, "candidate_number").orElse(""),
                        Optional.ofNullable(row.getObject("person", Long.class))))
                .optional();
    }

    private List<SheetOfSet> byPerson(long person, Share share) {
        return database.sql(
                        """
                        select s.class_set_id, s.id from sheets s join class_sets k on k.id = s.class_set_id join learners l on l.id = s.learner_id
                        where l.person_id = ? and %s""".formatted(condition(share)))
                .param(person)
                .query((row, number) -> new SheetOfSet(row.getLong("class_set_id"), row.getLong("id")))
                .list();
    }

    private List<SheetOfSet> byNumber(String candidateNumber, Share share) {
        return database.sql(
                        """
                        select s.class_set_id, s.id from sheets s join class_sets k on k.id = s.class_set_id join learners l on l.id = s.learner_id
                        where l.candidate_number = ? and %s""".formatted(condition(share)))
                .param(candidateNumber)
                .query((row, number) -> new SheetOfSet(row.getLong("class_set_id"), row.getLong("id")))
                .list();
    }

    private List<SheetOfSet> byName(String name, String className, Share share) {
        return database.sql(
                        """
                        select s.class_set_id, s.id
                        from sheets s join class_sets k on k.id = s.class_set_id join learners l on l.id = s.learner_id join school_classes c on c.id = l.class_id
                        where l.name = ? and c.name = ? and %s""".formatted(condition(share)))
                .params(name, className)
                .query((row, number) -> new SheetOfSet(row.getLong("class_set_id"), row.getLong("id")))
                .list();
    }

    private static String condition(Share share) {
        return share.condition("k.owner_id", "k.demonstration");
    }

    private Stream<LearnerHistory.Entry> entry(SheetOfSet found) {
        ClassSet classSet = classSets.find(found.classSetId()).orElseThrow();
        return sheets.find(found.sheetId()).map(sheet -> new LearnerHistory.Entry(classSet, sheet)).stream();
    }
}
