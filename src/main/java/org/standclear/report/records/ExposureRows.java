package org.standclear.report.records;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.time.SqlTime;
import org.standclear.report.TermReport.Counted;
import org.standclear.report.TermReport.Exposure;

/**
 * Starts, attended time, and what happened in them. A cell or a kind is named by "equal" beside each span of time, and the
 * lab asked of a row that is found already: H2 prefers any "equal", and "in", to a span, and would read all of a cell.
 */
@Repository
class ExposureRows {

    /** Incidents by class, in the order of their weight. */
    private static final Map<String, String> CLASSES = new LinkedHashMap<>();

    static {
        CLASSES.put("OBSERVATION", "observation, unsafe condition");
        CLASSES.put("NEAR_MISS", "near miss");
        CLASSES.put("PRECAUTIONARY_STOP", "precautionary stop, reported");
        CLASSES.put("PROTECTIVE_STOP", "protective stop, or e-stop because something was going wrong, reported");
        CLASSES.put("CONTACT", "contact without injury");
        CLASSES.put("PROPERTY_DAMAGE", "property damage");
        CLASSES.put("FIRST_AID", "first aid");
        CLASSES.put("MEDICAL_TREATMENT", "medical treatment or more than first aid");
        CLASSES.put("REPORTABLE", "may have to be reported to an authority");
    }

    private static final String STARTS = """
             from run_events e
            where e.kind = 'STARTED' and e.happened_at >= :from and e.happened_at < :until
            and exists (select 1 from cells l where l.id = e.cell_id and l.lab_id = :lab)""";

    private final JdbcClient jdbc;

    ExposureRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** One time that a run was started, and where. */
    record Start(UUID cell, Instant at) {}

    Exposure exposure(Days days, int starts) {
        long attended = attendedMinutes(days);
        return days.ask(jdbc, """
                select count(*) as runs, coalesce(sum(r.passes), 0) as passes from cells c join runs r on r.cell_id = c.id
                where c.lab_id = :lab and r.started_at >= :from and r.started_at < :until""")
                .query((row, number) -> new Exposure(row.getInt("runs"), starts, attended, row.getInt("passes")))
                .single();
    }

    /** In order of time. */
    List<Start> starts(Days days) {
        return days.ask(jdbc, "select e.cell_id, e.happened_at" + STARTS + " order by e.happened_at")
                .query((row, number) ->
                        new Start(row.getObject("cell_id", UUID.class), SqlTime.read(row, "happened_at")))
                .list();
    }

    int startsIn(Days days) {
        return days.count(jdbc, "select count(*)" + STARTS);
    }

    /**
     * Near misses and worse, protective stops, and presses of the e-stop but for those whose reset says that nothing was
     * wrong. A stop that was logged and reported counts once. Each part is bounded by itself: from outside, H2 bounds neither.
     */
    List<Instant> events(Days days) {
        return instants(days, """
                select at from (
                    select e.happened_at as at from run_events e left join cell_stops s on s.id = e.id
                    where e.kind in ('PROTECTIVE_STOP', 'E_STOP_PRESS') and e.happened_at >= :from and e.happened_at < :until
                        and (e.kind = 'PROTECTIVE_STOP' or s.precaution is null or not s.precaution)
                        and exists (select 1 from cells l where l.id = e.cell_id and l.lab_id = :lab)
                    union all
                    select i.happened_at from incidents i where i.lab_id = :lab
                        and i.happened_at >= :from and i.happened_at < :until
                        and i.class not in ('OBSERVATION', 'PRECAUTIONARY_STOP')
                        and not (i.class = 'PROTECTIVE_STOP' and exists (select 1 from run_events e
                            where e.booking_id = i.booking_id and e.kind in ('E_STOP_PRESS', 'PROTECTIVE_STOP')))
                ) e order by at""");
    }

    private List<Instant> instants(Days days, String sql) {
        return days.ask(jdbc, sql)
                .query((row, number) -> SqlTime.read(row, "at"))
                .list();
    }

    /** From the start under a release to its stop or its run's end; a run that goes on counts when it is over. */
    private long attendedMinutes(Days days) {
        return days
                .ask(jdbc, """
                select r.used_at, coalesce(r.lapsed_at, r.ended_at,
                    (select n.ended_at from runs n where n.booking_id = r.booking_id)) as over_at
                from cells c join signoff_releases r on r.cell_id = c.id
                where c.lab_id = :lab and r.used_at >= :from and r.used_at < :until""")
                .query((row, number) -> {
                    Instant over = SqlTime.readNullable(row, "over_at");
                    return over == null ? Duration.ZERO : Duration.between(SqlTime.read(row, "used_at"), over);
                })
                .list()
                .stream()
                .reduce(Duration.ZERO, Duration::plus)
                .toMinutes();
    }

    List<Counted> counts(Days days) {
        List<Counted> counts = new ArrayList<>();
        counts.add(events(days, "E_STOP_PRESS", "e-stop presses, any cause"));
        counts.add(events(days, "PROTECTIVE_STOP", "protective stops"));
        Map<String, Integer> byClass = new LinkedHashMap<>();
        days.ask(jdbc, """
                select class, count(*) as n from incidents where lab_id = :lab and happened_at >= :from and happened_at < :until
                group by class""").query(row -> {
            byClass.put(row.getString("class"), row.getInt("n"));
        });
        CLASSES.forEach((code, words) -> counts.add(new Counted(code, words, byClass.getOrDefault(code, 0))));
        counts.add(new Counted("LAPSED", "releases lapsed before their start", days.count(jdbc, """
                        select count(*) from cells c join signoff_releases r on r.cell_id = c.id
                        where c.lab_id = :lab and r.issued_at >= :from and r.issued_at < :until
                        and r.lapsed_at is not null and r.used_at is null""")));
        counts.add(new Counted("DISAGREED", "answers that disagreed", days.count(jdbc, """
                        select count(*) from signoff_disagreements d
                        where d.answered_at >= :from and d.answered_at < :until
                        and exists (select 1 from bookings b where b.id = d.booking_id and b.lab_id = :lab)""")));
        return counts;
    }

    private Counted events(Days days, String kind, String words) {
        return new Counted(
                kind,
                words,
                days.count(
                        jdbc,
                        "select count(*) from run_events e where e.kind = '" + kind
                                + "' and e.happened_at >= :from and e.happened_at < :until"
                                + " and exists (select 1 from cells l where l.id = e.cell_id and l.lab_id = :lab)"));
    }
}
