package org.standclear.report.records;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.cell.CellTag;
import org.standclear.cell.RecurringDuty;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.report.TermUpkeep;
import org.standclear.report.TermUpkeep.Duty;
import org.standclear.report.TermUpkeep.MakeUps;
import org.standclear.report.TermUpkeep.Tags;
import org.standclear.report.TermUpkeep.Waived;

/** How the lab's cells were kept in a term. */
@Repository
class UpkeepRows {

    private static final double SECONDS_OF_AN_HOUR = 3600;

    private final JdbcClient jdbc;
    private final LabTime labTime;

    UpkeepRows(JdbcClient jdbc, LabTime labTime) {
        this.jdbc = jdbc;
        this.labTime = labTime;
    }

    TermUpkeep of(Days days) {
        return new TermUpkeep(duties(days), tags(days), waivers(days), makeUps(days));
    }

    private JdbcClient.StatementSpec ask(Days days, String sql) {
        return days.ask(jdbc, sql);
    }

    /** The first time somebody said how often, and how often at the end of the term. */
    private record Asked(LocalDate since, int days) {}

    private List<Duty> duties(Days days) {
        Map<String, Asked> asked = new LinkedHashMap<>();
        ask(days, """
                select c.name, i.duty, i.interval_days, i.changed_at from cell_duty_intervals i join cells c on c.id = i.cell_id
                where c.lab_id = :lab and i.changed_at < :until order by c.name, i.duty, i.number""").query(row -> {
            String key = row.getString("name") + "\n" + row.getString("duty");
            Asked before = asked.get(key);
            LocalDate since = before == null ? labTime.date(SqlTime.read(row, "changed_at")) : before.since();
            asked.put(key, new Asked(since, row.getInt("interval_days")));
        });
        Map<String, List<LocalDate>> done = new LinkedHashMap<>();
        ask(days, """
                select c.name, d.duty, d.done_on from cell_duties_done d join cells c on c.id = d.cell_id
                where c.lab_id = :lab and d.done_on <= :last order by c.name, d.duty, d.done_on""").query(row -> {
            done.computeIfAbsent(row.getString("name") + "\n" + row.getString("duty"), key -> new ArrayList<>())
                    .add(row.getObject("done_on", LocalDate.class));
        });
        List<Duty> duties = new ArrayList<>();
        for (String cell : ask(days, "select name from cells where lab_id = :lab order by name")
                .query(String.class)
                .list()) {
            for (RecurringDuty duty : RecurringDuty.values()) {
                String key = cell + "\n" + duty.name();
                duties.add(duty(cell, duty, asked.get(key), done.getOrDefault(key, List.of()), days));
            }
        }
        return duties;
    }

    private Duty duty(
            String cell,
            RecurringDuty duty,
            @org.jspecify.annotations.Nullable Asked asked,
            List<LocalDate> done,
            Days days) {
        int inTerm =
                (int) done.stream().filter(on -> !on.isBefore(days.first())).count();
        if (asked == null) {
            return new Duty(cell, duty.words(), null, inTerm, 0, 0, null, false);
        }
        LocalDate last = days.last().isAfter(labTime.today()) ? labTime.today() : days.last();
        DutyTerm term = new DutyTerm(asked.since(), asked.days(), done, days.first(), last);
        return new Duty(
                cell,
                duty.words(),
                asked.days(),
                inTerm,
                term.fellDue(),
                term.overdueDays(),
                term.next(),
                term.lateAtEnd());
    }

    private List<Tags> tags(Days days) {
        Instant now = labTime.now();
        Instant end = days.until().isAfter(now) ? now : days.until();
        Map<String, Tags> tags = new LinkedHashMap<>();
        ask(days, """
                select c.name, t.kind, t.placed_at, t.lifted_at from cell_tags t join cells c on c.id = t.cell_id
                where c.lab_id = :lab and t.placed_at < :until and (t.lifted_at is null or t.lifted_at > :from)
                order by c.name, t.kind""").query(row -> {
            String cell = row.getString("name");
            String kind = CellTag.Kind.valueOf(row.getString("kind")).words();
            Instant placed = SqlTime.read(row, "placed_at");
            Instant lifted = SqlTime.readNullable(row, "lifted_at");
            boolean hangs = lifted == null || !lifted.isBefore(end);
            Instant from = placed.isBefore(days.from()) ? days.from() : placed;
            Duration hung = Duration.between(from, hangs || lifted == null ? end : lifted);
            tags.merge(
                    cell + "\n" + kind,
                    new Tags(cell, kind, 1, Math.max(0, hung.toSeconds()) / SECONDS_OF_AN_HOUR, hangs ? 1 : 0),
                    UpkeepRows::together);
        });
        return List.copyOf(tags.values());
    }

    private static Tags together(Tags one, Tags other) {
        return new Tags(
                one.cell(),
                one.kind(),
                one.hung() + other.hung(),
                one.hours() + other.hours(),
                one.stillHanging() + other.stillHanging());
    }

    private List<Waived> waivers(Days days) {
        Map<String, Waived> waived = new LinkedHashMap<>();
        Map<String, Map<String, Integer>> checks = new LinkedHashMap<>();
        ask(days, """
                select c.name, w.checks, w.used_at, (select count(*) from signoff_waivers_taken_back t where t.waiver_id = w.id)
                    as taken_back
                from signoff_waivers w join cells c on c.id = (select b.cell_id from bookings b where b.id = w.booking_id)
                where c.lab_id = :lab and w.given_at >= :from and w.given_at < :until order by c.name, w.given_at""").query(row -> {
            String cell = row.getString("name");
            Map<String, Integer> counted = checks.computeIfAbsent(cell, key -> new TreeMap<>());
            Arrays.stream(row.getString("checks").split(" ")).forEach(check -> counted.merge(check, 1, Integer::sum));
            Waived one = new Waived(cell, 1, row.getObject("used_at") == null ? 0 : 1, row.getInt("taken_back"), "");
            waived.merge(cell, one, UpkeepRows::together);
        });
        return waived.values().stream()
                .map(one -> new Waived(
                        one.cell(),
                        one.given(),
                        one.used(),
                        one.takenBack(),
                        checks.getOrDefault(one.cell(), Map.of()).entrySet().stream()
                                .map(check -> check.getKey() + " " + check.getValue())
                                .collect(Collectors.joining(", "))))
                .toList();
    }

    private static Waived together(Waived one, Waived other) {
        return new Waived(
                one.cell(),
                one.given() + other.given(),
                one.used() + other.used(),
                one.takenBack() + other.takenBack(),
                "");
    }

    private MakeUps makeUps(Days days) {
        Instant now = labTime.now();
        Instant end = days.until().isAfter(now) ? now : days.until();
        return ask(days, """
                select count(*) as granted,
                    coalesce(sum(case when m.used_by is not null then 1 else 0 end), 0) as used,
                    coalesce(sum(case when m.withdrawn_at is not null then 1 else 0 end), 0) as withdrawn,
                    coalesce(sum(case when m.used_by is null and m.withdrawn_at is null and m.valid_until <= :end
                        then 1 else 0 end), 0) as expired
                from booking_make_ups m where m.lab_id = :lab and m.granted_at >= :from and m.granted_at < :until""")
                .param("end", SqlTime.toSql(end))
                .query((row, number) -> {
                    int granted = row.getInt("granted");
                    int used = row.getInt("used");
                    int withdrawn = row.getInt("withdrawn");
                    int expired = row.getInt("expired");
                    return new MakeUps(granted, used, withdrawn, expired, granted - used - withdrawn - expired);
                })
                .single();
    }
}
