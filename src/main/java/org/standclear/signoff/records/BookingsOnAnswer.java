package org.standclear.signoff.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.check.AnswerUses;
import org.standclear.people.People;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;

/** The upcoming bookings that an answer of the check decides about. */
@Repository
class BookingsOnAnswer implements AnswerUses {

    private final JdbcClient jdbc;
    private final WaiverWords waivers;
    private final People people;
    private final LabTime labTime;
    private final Clock clock;

    BookingsOnAnswer(JdbcClient jdbc, WaiverWords waivers, People people, LabTime labTime, Clock clock) {
        this.jdbc = jdbc;
        this.waivers = waivers;
        this.people = people;
        this.labTime = labTime;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Use> of(AnswerId answer) {
        return jdbc.sql("""
                select b.id, b.operator_id, b.starts_at, b.ends_at from bookings b
                join signoff_preparations p on p.booking_id = b.id and p.revision_id = b.revision_id
                where p.answer_id = :answer and b.ends_at > :now
                  and b.state in ('BOOKED', 'CHECKED', 'READY', 'RELEASED')
                  and not exists (select 1 from signoff_preparations later where later.booking_id = b.id
                    and later.kept_no > p.kept_no)
                order by b.starts_at, b.id""")
                .param("answer", answer.value())
                .param("now", SqlTime.toSql(SqlTime.stored(clock.instant())))
                .query((row, number) -> use(row, answer))
                .list();
    }

    private Use use(ResultSet row, AnswerId answer) throws SQLException {
        BookingId booking = new BookingId(row.getObject("id", UUID.class));
        return new Use(
                "/bookings/" + booking,
                labTime.datedSpan(SqlTime.read(row, "starts_at"), SqlTime.read(row, "ends_at")),
                people.printedName(new PersonId(row.getObject("operator_id", UUID.class))),
                waivers.words(booking, answer));
    }
}
