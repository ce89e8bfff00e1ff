package org.standclear.report.records;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.People;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.report.ExceptionRule;
import org.standclear.report.WeekExceptions;
import org.standclear.report.records.ExceptionQueries.Query;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Chooses the lines of a week by the rules in force; what was signed stays as it was signed. */
@Service
class JdbcWeekExceptions implements WeekExceptions {

    /** Of one rule, so that one loud rule does not hide the others. */
    private static final int MOST_OF_A_RULE = 3;

    private final JdbcClient jdbc;
    private final ExceptionRows rows;
    private final ExceptionRuleRows ruleRows;
    private final People people;
    private final Labs labs;
    private final LabTime labTime;
    private final Trail trail;
    private final Clock clock;

    JdbcWeekExceptions(
            JdbcClient jdbc,
            ExceptionRows rows,
            ExceptionRuleRows ruleRows,
            People people,
            Labs labs,
            LabTime labTime,
            Trail trail,
            Clock clock) {
        this.jdbc = jdbc;
        this.rows = rows;
        this.ruleRows = ruleRows;
        this.people = people;
        this.labs = labs;
        this.labTime = labTime;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public Week week(LocalDate monday) {
        LabId lab = labs.theLab().id();
        Instant now = SqlTime.stored(clock.instant());
        List<Line> lines = signed(lab, monday);
        List<String> known = lines.stream().map(JdbcWeekExceptions::key).toList();
        int more = 0;
        List<Line> fresh = new ArrayList<>();
        for (Query query : ExceptionQueries.ALL) {
            ExceptionRule rule = ruleRows.inForce(lab, query);
            if (!rule.active()) {
                continue;
            }
            List<Line> found = rows.of(query, rule.threshold(), days(monday), now).stream()
                    .map(this::line)
                    .filter(line -> !known.contains(key(line)))
                    .toList();
            int room = Math.max(0, Math.min(MOST_OF_A_RULE, MOST - lines.size() - fresh.size()));
            fresh.addAll(found.subList(0, Math.min(room, found.size())));
            more += Math.max(0, found.size() - room);
        }
        lines.addAll(fresh);
        return new Week(monday, lines, more, Sha256.of(statement(monday, fresh)));
    }

    private Days days(LocalDate monday) {
        LocalDate next = monday.plusDays(7);
        return new Days(
                labs.theLab().id(),
                monday.atStartOfDay(labTime.zone()).toInstant(),
                next.atStartOfDay(labTime.zone()).toInstant(),
                monday,
                next.isAfter(labTime.today()) ? labTime.today() : next);
    }

    private Line line(ExceptionRows.Found found) {
        Query rule = found.rule();
        String when = rule.measure() == ExceptionQueries.Measure.DAYS
                ? labTime.day(found.at())
                : labTime.day(found.at()) + " " + labTime.time(found.at());
        return new Line(
                rule.code(),
                rule.title(),
                found.id().toString(),
                rule.says().formatted(found.cell(), when, found.measure()),
                found.href(),
                found.at(),
                null);
    }

    private static String key(Line line) {
        return line.rule() + " " + line.subject();
    }

    private static String statement(LocalDate monday, List<Line> lines) {
        return "I have read these exceptions of the week of " + monday + ":\n"
                + lines.stream().map(Line::words).collect(Collectors.joining("\n"));
    }

    private List<Line> signed(LabId lab, LocalDate monday) {
        Map<String, String> titles = new HashMap<>();
        ExceptionQueries.ALL.forEach(rule -> titles.put(rule.code(), rule.title()));
        return new ArrayList<>(jdbc.sql("""
                select * from report_exception_readings where lab_id = :lab and week = :week order by signed_at, id""")
                .param("lab", lab.value())
                .param("week", monday)
                .query((row, number) -> new Line(
                        row.getString("rule"),
                        titles.getOrDefault(row.getString("rule"), row.getString("rule")),
                        row.getString("subject"),
                        row.getString("words"),
                        "",
                        SqlTime.read(row, "signed_at"),
                        new Read(
                                row.getString("printed_name"),
                                SqlTime.read(row, "signed_at"),
                                row.getString("remark"))))
                .list());
    }

    @Override
    @Transactional(readOnly = true)
    public List<ExceptionRule> rules() {
        return ruleRows.all(labs.theLab().id());
    }

    @Override
    @Transactional
    public Changed change(String code, boolean active, int threshold, String reason, PersonId by) {
        Query rule = ruleRows.find(code).orElse(null);
        if (rule == null) {
            return new Changed.Refused("code", "There is no such rule.");
        }
        if (threshold < 1 || threshold > 10_000) {
            return new Changed.Refused("threshold", "A whole number from 1 to 10000.");
        }
        if (reason.isBlank()) {
            return new Changed.Refused("reason", "Say why; it stays in the record.");
        }
        LabId lab = labs.theLab().id();
        ExceptionRule wanted = new ExceptionRule(code, rule.title(), rule.reason(), threshold, rule.unit(), active);
        ruleRows.change(lab, wanted, reason.strip(), by, SqlTime.stored(clock.instant()));
        trail.append(TrailEntry.of(
                        lab,
                        "report.exception-rule-changed",
                        code,
                        by,
                        people.printedName(by) + " changed the rule \"" + rule.title() + "\": "
                                + (active ? "from " + threshold + " " + rule.unit() : "not asked") + ". Reason: "
                                + reason.strip())
                .with("active", active)
                .with("threshold", threshold));
        return new Changed.Done();
    }

    @Override
    @Transactional
    public Signed sign(LocalDate monday, String sha256, String remark, PersonId by) {
        Week week = week(monday);
        List<Line> unread =
                week.lines().stream().filter(line -> line.read() == null).toList();
        if (unread.isEmpty()) {
            return new Signed.Refused("All lines of this week are signed already.");
        }
        if (!week.sha256().equals(sha256)) {
            return new Signed.Refused("The lines changed since the page was opened. Read them again.");
        }
        LabId lab = labs.theLab().id();
        Instant now = SqlTime.stored(clock.instant());
        unread.forEach(line -> keep(lab, week, line, remark.strip(), by, now));
        trail.append(TrailEntry.of(
                        lab,
                        "report.exceptions-read",
                        monday,
                        by,
                        people.printedName(by) + " read and signed " + unread.size() + " exceptions of the week of "
                                + monday + ".")
                .with("statement-sha256", sha256));
        return new Signed.Kept(unread.size());
    }

    private void keep(LabId lab, Week week, Line line, String remark, PersonId by, Instant now) {
        jdbc.sql("""
                insert into report_exception_readings (id, lab_id, week, rule, subject, words, remark, statement_sha256,
                    signed_by, printed_name, signed_at)
                values (:id, :lab, :week, :rule, :subject, :words, :remark, :sha256, :by, :name, :at)""")
                .param("id", Id.newValue())
                .param("lab", lab.value())
                .param("week", week.monday())
                .param("rule", line.rule())
                .param("subject", line.subject())
                .param("words", line.words())
                .param("remark", remark)
                .param("sha256", week.sha256())
                .param("by", by.value())
                .param("name", people.printedName(by))
                .param("at", SqlTime.toSql(now))
                .update();
    }
}
