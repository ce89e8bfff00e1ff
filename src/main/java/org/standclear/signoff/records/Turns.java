package org.standclear.signoff.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;
import org.standclear.signoff.BenchNumbers;
import org.standclear.signoff.BenchSettings;
import org.standclear.signoff.Turn;
import org.standclear.signoff.rules.Spells;

/** Reads from the signatures how long somebody has been at the e-stop, on whatever cell. */
@Repository
class Turns {

    /** Longer than any turn and its rest; what lies further back cannot matter. */
    private static final Duration FAR = Duration.ofHours(6);

    private final JdbcClient jdbc;
    private final BenchNumbers numbers;

    Turns(JdbcClient jdbc, BenchNumbers numbers) {
        this.jdbc = jdbc;
        this.numbers = numbers;
    }

    Turn of(PersonId person, Instant now) {
        BenchSettings settings = numbers.inForce();
        List<Spells.Spell> spells = spells(person, now);
        return Spells.beganLater(spells, now)
                ? Turn.untold(settings.turn(), now)
                : new Turn(Spells.withoutRest(spells, settings.rest(), now), settings.turn(), now);
    }

    /** When the person may take a new turn, if they stay away from now on. */
    Instant restedAt(Instant now) {
        return now.plus(numbers.inForce().rest());
    }

    private List<Spells.Spell> spells(PersonId person, Instant now) {
        return jdbc.sql("""
                select g.signed_at, s.open_mark, s.closed_at, s.outcome, b.ends_at, r.start_by, r.used_at, r.lapsed_at,
                    r.ended_at, r.attendant_id = g.signer and r.suspended_because is null as still_there,
                    (select min(away.left_at) from signoff_handovers away
                        where away.release_id = r.id and away.from_person = g.signer and away.left_at >= g.signed_at)
                        as left_at
                from signoff_signatures g
                join signoff_sheets s on s.id = g.sheet_id
                join bookings b on b.id = s.booking_id
                left join signoff_handovers h on h.sheet_id = s.id
                left join signoff_releases r on r.sheet_id = s.id or r.id = h.release_id
                where g.signer = :person and g.part = 'attendant' and s.list in ('bench', 'handover')
                  and g.signed_at > :from""")
                .param("person", person.value())
                .param("from", SqlTime.toSql(now.minus(FAR)))
                .query((row, number) -> spell(row, now))
                .list();
    }

    private static Spells.Spell spell(ResultSet row, Instant now) throws SQLException {
        Instant from = SqlTime.read(row, "signed_at");
        if (row.getObject("open_mark") != null) {
            return lasting(from, SqlTime.read(row, "ends_at"), now);
        }
        Instant startBy = SqlTime.readNullable(row, "start_by");
        if (startBy == null || !"DONE".equals(row.getString("outcome"))) {
            return over(from, now, SqlTime.readNullable(row, "closed_at"));
        }
        Instant left = SqlTime.readNullable(row, "left_at");
        Instant lapsed = SqlTime.readNullable(row, "lapsed_at");
        Instant ended = SqlTime.readNullable(row, "ended_at");
        boolean unused = SqlTime.readNullable(row, "used_at") == null;
        // when somebody left is told by the clock; that another one stands there is told by the release itself
        return left == null && lapsed == null && ended == null && row.getBoolean("still_there")
                ? lasting(from, unused ? startBy : null, now)
                : over(from, now, unused ? startBy : null, left, lapsed, ended);
    }

    /** Nothing has ended it but what it is planned for, if that has come. */
    private static Spells.Spell lasting(Instant from, @Nullable Instant planned, Instant now) {
        return new Spells.Spell(from, earliest(now, planned), planned == null || now.isBefore(planned));
    }

    private static Spells.Spell over(Instant from, Instant now, @Nullable Instant... ends) {
        return new Spells.Spell(from, earliest(now, ends), false);
    }

    private static Instant earliest(Instant now, @Nullable Instant... others) {
        return Stream.of(others)
                .filter(java.util.Objects::nonNull)
                .map(java.util.Objects::requireNonNull)
                .filter(other -> other.isBefore(now))
                .min(java.util.Comparator.naturalOrder())
                .orElse(now);
    }
}
