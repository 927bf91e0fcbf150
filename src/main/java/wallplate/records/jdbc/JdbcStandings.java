package wallplate.records.jdbc;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import wallplate.ownership.Share;
import wallplate.records.Progress;
import wallplate.records.Standings;

/** Finds by narrow rows which sets stand on a page, and fetches only those whole: a set's row carries its whole task. */
@Repository
class JdbcStandings implements Standings {

    private static final String FOUND =
            """
            select s.id, count(*) over () as found
            from class_sets s
            join school_classes c on c.id = s.class_id
            %s
            where %s and %s and (? = '' or position(? in lower(s.title || ' ' || c.name)) > 0)
            order by s.created_at desc, s.id desc limit ? offset ?""";

    private static final String WITH_PROGRESS =
            "join (" + SheetRows.PROGRESS + " group by class_set_id) p on p.class_set_id = s.id";

    private final JdbcClient database;
    private final JdbcClassSets sets;
    private final SheetRows sheets;

    JdbcStandings(JdbcClient database, JdbcClassSets sets, SheetRows sheets) {
        this.database = database;
        this.sets = sets;
        this.sheets = sheets;
    }

    @Override
    public Page page(Share share, Which which, String containing, int from, int most) {
        String sought = containing.strip().toLowerCase(Locale.ROOT);
        AtomicInteger found = new AtomicInteger();
        List<Long> ids = database.sql(FOUND.formatted(
                        which == Which.ALL ? "" : WITH_PROGRESS,
                        share.condition("s.owner_id", "s.demonstration"),
                        condition(which)))
                .params(sought, sought, most, from)
                .query((row, number) -> {
                    found.set(row.getInt("found"));
                    return row.getLong("id");
                })
                .list();
        Map<Long, Progress> progress = sheets.progress(ids);
        return new Page(
                sets.of(ids).stream()
                        .map(set -> new Standing(set, progress.get(set.id())))
                        .toList(),
                found.get());
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
