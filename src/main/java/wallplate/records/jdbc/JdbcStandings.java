package wallplate.records.jdbc;

import java.util.Locale;
import java.util.concurrent.atomic.AtomicInteger;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import wallplate.ownership.Share;
import wallplate.records.Standings;

@Repository
class JdbcStandings implements Standings {

    private static final String SELECT =
            """
            select s.id, s.title, s.class_id, c.name as class_name, s.task_id, s.task_yaml, s.demonstration,
                   s.created_at, s.released_at, coalesce(p.sheets, 0) as sheets, coalesce(p.waiting, 0) as waiting,
                   coalesce(p.reading, 0) as reading, coalesce(p.done, 0) as done,
                   coalesce(p.unreadable, 0) as unreadable, coalesce(p.failed, 0) as failed,
                   coalesce(p.needs_person, 0) as needs_person, coalesce(p.checked, 0) as checked,
                   count(*) over () as found
            from class_sets s
            join school_classes c on c.id = s.class_id
            left join (%s group by class_set_id) p on p.class_set_id = s.id
            where %s and %s and (? = '' or position(? in lower(s.title || ' ' || c.name)) > 0)
            order by s.created_at desc, s.id desc limit ? offset ?""";

    private final JdbcClient database;

    JdbcStandings(JdbcClient database) {
        this.database = database;
    }

    @Override
    public Page page(Share share, Which which, String containing, int from, int most) {
        String sought = containing.strip().toLowerCase(Locale.ROOT);
        AtomicInteger found = new AtomicInteger();
        var sets = database.sql(SELECT.formatted(SheetRows.PROGRESS, share.condition("s.owner_id", "s.demonstration"), condition(which)))
                .params(sought, sought, most, from)
                .query((row, number) -> {
                    found.set(row.getInt("found"));
                    return new Standing(JdbcClassSets.classSet(row), SheetRows.progress(row));
                })
                .list();
        return new Page(sets, found.get());
    }

    private static String condition(Which which) {
        return switch (which) {
            case ALL -> "1 = 1";
            case AT_WORK -> "p.waiting + p.reading > 0";
            case NEEDS_PERSON -> "p.needs_person > 0";
            case TO_RELEASE -> "p.waiting + p.reading = 0 and p.needs_person = 0 and s.released_at is null";
        };
    }
}
