package wallplate.ownership.jdbc;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.ownership.Belonging;
import wallplate.ownership.Belongings;
import wallplate.ownership.Kind;

@Repository
class JdbcBelongings implements Belongings {

    private static final String OF_DEMONSTRATION_CLASS =
            "exists (select 1 from class_sets d where d.class_id = c.id and d.demonstration)";
    private static final String OF_DEMONSTRATION_TASK =
            "exists (select 1 from class_sets d where d.task_id = t.id and d.demonstration)";

    /** A number as addresses have it. */
    private static final String NUMBER = "\\d{1,18}";

    private final JdbcClient database;

    JdbcBelongings(JdbcClient database) {
        this.database = database;
    }

    /** What one of the rows that a record is made of, or lies in, says. */
    private record Row(@Nullable Long owner, boolean demonstration) {}

    @Override
    public Optional<Belonging> find(Kind kind, String name) {
        if (kind != Kind.PICTURE && !name.matches(NUMBER)) {
            return Optional.empty();
        }
        List<Row> rows = rows(kind, name);
        if (rows.isEmpty()) {
            return Optional.empty();
        }
        Set<Long> owners = new LinkedHashSet<>();
        rows.forEach(row -> Optional.ofNullable(row.owner()).ifPresent(owners::add));
        boolean notOneOwner = owners.size() > 1 || rows.stream().anyMatch(row -> row.owner() == null);
        if (kind == Kind.WHOLE_LEARNER && notOneOwner) {
            owners.clear();
        }
        boolean demonstration = kind == Kind.WHOLE_LEARNER
                ? rows.stream().allMatch(Row::demonstration)
                : rows.stream().anyMatch(Row::demonstration);
        return Optional.of(new Belonging(owners, secondMarkers(kind, name), demonstration));
    }

    private List<Row> rows(Kind kind, String name) {
        return switch (kind) {
            case TASK -> rows("select t.owner_id, %s as demonstration from drawing_tasks t where t.id = ?"
                    .formatted(OF_DEMONSTRATION_TASK), Long.valueOf(name));
            case CLASS -> rows("select c.owner_id, %s as demonstration from school_classes c where c.id = ?"
                    .formatted(OF_DEMONSTRATION_CLASS), Long.valueOf(name));
            case CLASS_SET -> rows("select s.owner_id, s.demonstration from class_sets s where s.id = ?", Long.valueOf(name));
            case MARK_SHEET -> rows("select m.owner_id, false as demonstration from mark_sheets m where m.id = ?", Long.valueOf(name));
            case LEARNER -> rows(
                    """
                    select c.owner_id, %s as demonstration from learners l join school_classes c on c.id = l.class_id
                    where l.id = ?""".formatted(OF_DEMONSTRATION_CLASS), Long.valueOf(name));
            case WHOLE_LEARNER -> rows(
                    """
                    select c.owner_id, %s as demonstration
                    from learners one join learners l on l.id = one.id or l.person_id = one.person_id
                    join school_classes c on c.id = l.class_id where one.id = ?""".formatted(OF_DEMONSTRATION_CLASS),
                    Long.valueOf(name));
            case SHEET -> rows(
                    """
                    select s.owner_id, s.demonstration from sheets p join class_sets s on s.id = p.class_set_id
                    where p.id = ?""", Long.valueOf(name));
            case PICTURE -> rows(
                    """
                    select distinct s.owner_id, s.demonstration from class_sets s
                    where s.id in (select p.class_set_id from sheets p where p.page_picture = ?)
                       or s.id in (select p.class_set_id from sheets p where p.screen_picture = ?)
                       or s.id in (select p.class_set_id from sheets p join sheet_first_readings f on f.sheet_id = p.id
                                   where f.page_picture = ?)
                       or s.id in (select p.class_set_id from sheets p join sheet_first_readings f on f.sheet_id = p.id
                                   where f.screen_picture = ?)""", name, name, name, name);
            case MODERATION -> rows(
                    """
                    select s.owner_id, s.demonstration from moderations m join class_sets s on s.id = m.class_set_id
                    where m.id = ?""", Long.valueOf(name));
        };
    }

    private List<Row> rows(String sql, Object... values) {
        return database.sql(sql)
                .params(List.of(values))
                .query((row, number) -> new Row(row.getObject("owner_id", Long.class), row.getBoolean("demonstration")))
                .list();
    }

    private Set<Long> secondMarkers(Kind kind, String name) {
        return switch (kind) {
            case MODERATION -> accounts("select moderator_id from moderations where id = ? and moderator_id is not null", Long.valueOf(name));
            case PICTURE -> accounts(
                    """
                    select m.moderator_id from moderations m
                    join moderation_sheets d on d.moderation_id = m.id join sheets p on p.id = d.sheet_id
                    where m.moderator_id is not null and (p.page_picture = ? or p.screen_picture = ?)""", name, name);
            default -> Set.of();
        };
    }

    private Set<Long> accounts(String sql, Object... values) {
        return database.sql(sql).params(List.of(values)).query(Long.class).list().stream().collect(Collectors.toSet());
    }

    @Override
    public boolean waitsForSecondMarks(Kind kind, String name, long account) {
        String sets = switch (kind) {
            case CLASS_SET -> "select s.id from class_sets s where s.id = ?";
            case SHEET -> "select p.class_set_id from sheets p where p.id = ?";
            case MARK_SHEET -> "select k.class_set_id from mark_sheet_columns k where k.mark_sheet_id = ?";
            case LEARNER, WHOLE_LEARNER ->
                """
                select p.class_set_id from sheets p join learners l on l.id = p.learner_id
                join learners one on l.id = one.id or l.person_id = one.person_id where one.id = ?""";
            case TASK, CLASS, PICTURE, MODERATION -> "";
        };
        return !sets.isEmpty()
                && database.sql("select count(*) from moderations where moderator_id = ? and handed_in_at is null and class_set_id in ("
                                        + sets + ")")
                                .params(account, Long.valueOf(name))
                                .query(Integer.class)
                                .single()
                        > 0;
    }

    @Override
    @Transactional
    public void give(Kind kind, long id, long account) {
        switch (kind) {
            case TASK -> update("update drawing_tasks set owner_id = ? where id = ?", account, id);
            case MARK_SHEET -> update("update mark_sheets set owner_id = ? where id = ?", account, id);
            case CLASS_SET -> {
                update("update class_sets set owner_id = ? where id = ?", account, id);
                update(
                        """
                        update school_classes set owner_id = ? where school_year is null
                            and id = (select s.class_id from class_sets s where s.id = ?)""",
                        account,
                        id);
            }
            case CLASS -> {
                for (String table : List.of("class_sets", "mark_sheets")) {
                    update(
                            """
                            update %s set owner_id = ? where class_id = ? and coalesce(owner_id, 0)
                                = (select coalesce(c.owner_id, 0) from school_classes c where c.id = ?)""".formatted(table),
                            account,
                            id,
                            id);
                }
                update("update school_classes set owner_id = ? where id = ?", account, id);
            }
            case LEARNER, WHOLE_LEARNER, SHEET, PICTURE, MODERATION ->
                throw new IllegalArgumentException("a " + kind + " belongs to what it is a part of");
        }
    }

    private int update(String sql, Object... values) {
        return database.sql(sql).params(List.of(values)).update();
    }

    @Override
    public void giveSample(long moderationId, long account) {
        update(
                """
                update moderations set moderator_id = ?, moderator = (select a.name from accounts a where a.id = ?)
                where id = ?""",
                account,
                account,
                moderationId);
    }

    /** Where what somebody has is kept, each with the condition that it is not the demonstration's. */
    private static final Map<String, String> TABLES = tables();

    private static Map<String, String> tables() {
        Map<String, String> tables = new LinkedHashMap<>();
        // A list that belongs to one set is no class of its own.
        tables.put("school_classes", "x.school_year is not null");
        tables.put("class_sets", "not x.demonstration");
        tables.put("drawing_tasks", "not exists (select 1 from class_sets d where d.task_id = x.id and d.demonstration)");
        tables.put("mark_sheets", "1 = 1");
        return tables;
    }

    @Override
    public List<Holding> holdings() {
        Map<Long, List<Integer>> counts = new LinkedHashMap<>();
        int table = 0;
        for (Map.Entry<String, String> one : TABLES.entrySet()) {
            int place = table;
            table++;
            database.sql("select coalesce(x.owner_id, 0) as owner, count(*) as number from %s x where %s group by coalesce(x.owner_id, 0) order by 1"
                            .formatted(one.getKey(), one.getValue()))
                    .query(row -> {
                        counts.computeIfAbsent(row.getLong("owner"), owner -> new ArrayList<>(List.of(0, 0, 0, 0)))
                                .set(place, row.getInt("number"));
                    });
        }
        return counts.entrySet().stream()
                .map(entry -> new Holding(
                        entry.getKey() == 0 ? Optional.empty() : Optional.of(entry.getKey()),
                        entry.getValue().get(0),
                        entry.getValue().get(1),
                        entry.getValue().get(2),
                        entry.getValue().get(3)))
                .toList();
    }

    @Override
    @Transactional
    public int handOver(Optional<Long> from, long to) {
        // Lists that belong to one set go with their sets.
        update(
                """
                update school_classes set owner_id = ? where school_year is null and coalesce(owner_id, 0) = ?
                    and not exists (select 1 from class_sets s where s.class_id = school_classes.id and s.demonstration)""",
                to,
                from.orElse(0L));
        return TABLES.entrySet().stream()
                .mapToInt(table -> update(
                        "update %s x set owner_id = ? where coalesce(x.owner_id, 0) = ? and %s"
                                .formatted(table.getKey(), table.getValue()),
                        to,
                        from.orElse(0L)))
                .sum();
    }
}
