package org.standclear.signoff.records;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.booking.BenchLog;
import org.standclear.cell.CellByCell;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/**
 * Reads step times from the bench lists of bookings that led to a run: set-up from the first of them that the attendant
 * signed, release work from the one that was released first. What is first in a booking is told by its round, since a clock
 * can be set back between two lists.
 */
@Repository
class LoggedSteps implements BenchLog {

    private static final double MINUTE = 60_000;

    /** Releases looked at for one whose times count: without an end, fewer than wanted would mean reading the whole log. */
    private static final int LOOKED_AT_EACH = 3;

    private static final String OF_THE_WHOLE_LAB = """
            (select l.* from signoff_releases l where l.used_at is not null
                and exists (select 1 from cells c where c.id = l.cell_id and c.lab_id = :lab)
                order by l.issued_at desc fetch first :looked rows only) r""";

    private static final String FIRST_OF_ITS_TURN = """
            not exists (select 1 from signoff_releases earlier
                    join signoff_sheets before on before.id = earlier.sheet_id
                    where earlier.booking_id = r.booking_id and earlier.used_at is not null
                        and before.round_number < released.round_number)""";

    private final JdbcClient jdbc;
    private final Labs labs;
    private final CellByCell cells;

    LoggedSteps(JdbcClient jdbc, Labs labs, CellByCell cells) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.cells = cells;
    }

    @Override
    public List<Double> setUps(int atMost) {
        return times(atMost, """
                select b.starts_at as since, ready.signed_at as until
                from %s
                join bookings b on b.id = r.booking_id
                join signoff_sheets released on released.id = r.sheet_id
                join signoff_sheets bench on bench.booking_id = r.booking_id and bench.list = 'bench'
                join signoff_signatures ready on ready.sheet_id = bench.id and ready.part = 'attendant'
                where %s
                and not exists (select 1 from signoff_sheets before
                    join signoff_signatures signed on signed.sheet_id = before.id and signed.part = 'attendant'
                    where before.booking_id = r.booking_id and before.list = 'bench'
                        and before.round_number < bench.round_number)
                order by r.issued_at desc, r.id""").stream().map(length -> Math.max(0, length)).toList();
    }

    /** The account that began has to be the one that signed: the signer's own, or a screen at the bench. */
    @Override
    public List<Double> releaseWork(int atMost) {
        return times(atMost, """
                select began.answered_at as since, done.signed_at as until
                from %s
                join signoff_sheets released on released.id = r.sheet_id and not released.brief
                join signoff_first_answers began on began.sheet_id = released.id
                join signoff_signatures done on done.sheet_id = released.id and done.part = 'releaser'
                where %s
                and done.signed_at >= began.answered_at
                and ((done.method = 'OWN_SIGN_IN' and began.account_id = done.signer)
                    or (done.method = 'SIGNING_PIN' and exists (select 1 from person_roles screen
                        where screen.person_id = began.account_id and screen.role = 'BENCH')))
                order by r.issued_at desc, r.id""");
    }

    private List<Double> times(int atMost, String select) {
        Map<String, Object> values = new HashMap<>();
        String latest = latestOfEachCell(values);
        if (latest.isEmpty()) {
            return List.of();
        }
        return jdbc.sql(select.formatted(latest, FIRST_OF_ITS_TURN) + " fetch first :most rows only")
                .param("most", atMost)
                .param("looked", atMost * LOOKED_AT_EACH)
                .params(values)
                .query((row, number) -> Duration.between(SqlTime.read(row, "since"), SqlTime.read(row, "until"))
                                .toMillis()
                        / MINUTE)
                .list();
    }

    /** The lab's latest, from as many of each cell. */
    private String latestOfEachCell(Map<String, Object> values) {
        // a bound that bounds nothing: from one on, H2 follows the index in its order
        Optional<String> parts = cells.parts(
                null,
                values,
                cell -> "select * from signoff_releases l where l.cell_id = :" + cell + " and l.used_at is not null"
                        + " and l.issued_at < timestamp with time zone '9999-01-01 00:00:00+00'"
                        + " order by l.cell_id desc, l.issued_at desc fetch first :looked rows only");
        if (parts.isEmpty()) {
            values.put("lab", labs.theLab().id().value());
            return OF_THE_WHOLE_LAB;
        }
        return parts.get().isEmpty()
                ? ""
                : "(select * from (" + parts.get() + ") x order by x.issued_at desc fetch first :looked rows only) r";
    }
}
