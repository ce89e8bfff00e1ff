package org.standclear.report.records;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.report.SignoffQualities;
import org.standclear.report.SignoffQuality;

/** Reads the signed lists of a week, without asking who signed them. */
@Service
class JdbcSignoffQualities implements SignoffQualities {

    private final JdbcClient jdbc;
    private final Labs labs;
    private final LabTime labTime;

    JdbcSignoffQualities(JdbcClient jdbc, Labs labs, LabTime labTime) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.labTime = labTime;
    }

    @Override
    @Transactional(readOnly = true)
    public SignoffQuality week(LocalDate monday) {
        Days days = new Days(
                labs.theLab().id(),
                monday.atStartOfDay(labTime.zone()).toInstant(),
                monday.plusDays(7).atStartOfDay(labTime.zone()).toInstant(),
                monday,
                monday.plusDays(6));
        return new SignoffQuality(seconds(days), same(days), days.count(jdbc, """
                        select count(*) from cells c join signoff_sheets s on s.cell_id = c.id
                        where c.lab_id = :lab and s.outcome = 'REFUSED' and s.closed_at >= :from and s.closed_at < :until"""), days.count(jdbc, """
                        select count(*) from signoff_disagreements d where d.answered_at >= :from and d.answered_at < :until
                        and exists (select 1 from bookings b where b.id = d.booking_id and b.lab_id = :lab)"""));
    }

    private List<Long> seconds(Days days) {
        return days
                .ask(jdbc, """
                select min(g.signed_at) as first_at, max(g.signed_at) as last_at
                from cells c join signoff_sheets s on s.cell_id = c.id join signoff_signatures g on g.sheet_id = s.id
                where c.lab_id = :lab and s.list = 'bench' and s.outcome = 'DONE' and not s.brief
                and s.closed_at >= :from and s.closed_at < :until
                group by s.id""")
                .query((row, number) -> Duration.between(SqlTime.read(row, "first_at"), SqlTime.read(row, "last_at"))
                        .toSeconds())
                .list()
                .stream()
                .sorted()
                .toList();
    }

    /** The fingerprint is left out: it differs from program to program. */
    private int same(Days days) {
        Map<UUID, Map<String, String>> values = new HashMap<>();
        Map<UUID, List<UUID>> byCell = new TreeMap<>();
        days.ask(jdbc, """
                select s.id, s.cell_id, g.part, a.item, a.field, a.answer
                from cells c join signoff_sheets s on s.cell_id = c.id join signoff_signatures g on g.sheet_id = s.id
                join signoff_answers a on a.signature_id = g.id
                where c.lab_id = :lab and s.list = 'bench' and s.outcome = 'DONE' and not s.brief and a.field <> 'fingerprint'
                and s.closed_at >= :from and s.closed_at < :until
                order by s.closed_at, s.id""").query(row -> {
            UUID sheet = row.getObject("id", UUID.class);
            if (!values.containsKey(sheet)) {
                byCell.computeIfAbsent(row.getObject("cell_id", UUID.class), cell -> new ArrayList<>())
                        .add(sheet);
            }
            values.computeIfAbsent(sheet, id -> new HashMap<>())
                    .put(row.getString("part") + row.getInt("item") + row.getString("field"), row.getString("answer"));
        });
        int same = 0;
        for (List<UUID> sheets : byCell.values()) {
            for (int i = 1; i < sheets.size(); i++) {
                same += Objects.equals(values.get(sheets.get(i)), values.get(sheets.get(i - 1))) ? 1 : 0;
            }
        }
        return same;
    }
}
