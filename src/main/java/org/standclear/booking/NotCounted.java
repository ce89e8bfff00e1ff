package org.standclear.booking;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Lost bookings that no quota counts: staff excused them, or began the person's count anew after them. */
@Component
class NotCounted {

    private final JdbcClient jdbc;
    private final Labs labs;

    NotCounted(JdbcClient jdbc, Labs labs) {
        this.jdbc = jdbc;
        this.labs = labs;
    }

    /** Those of the bookings that count; asks the database only when one was lost at all. */
    List<Booking> leftOut(PersonId operator, List<Booking> bookings) {
        if (bookings.stream().allMatch(booking -> booking.state().holdsItsSlot())) {
            return bookings;
        }
        Optional<Instant> reset = resetOf(operator);
        Set<BookingId> excused = excusedOf(operator);
        return bookings.stream()
                .filter(booking -> booking.state().holdsItsSlot()
                        || !excused.contains(booking.id())
                                && reset.filter(at -> booking.start().isBefore(at))
                                        .isEmpty())
                .toList();
    }

    Optional<Instant> resetOf(PersonId operator) {
        return jdbc.sql(
                        "select max(reset_at) as latest from booking_resets where lab_id = :lab and person_id = :person")
                .param("lab", labs.theLab().id().value())
                .param("person", operator.value())
                .query((row, number) -> Optional.ofNullable(SqlTime.readNullable(row, "latest")))
                .single();
    }

    private Set<BookingId> excusedOf(PersonId operator) {
        return new HashSet<>(jdbc.sql("""
                select e.booking_id from booking_excuses e join bookings b on b.id = e.booking_id
                where b.operator_id = :operator""")
                .param("operator", operator.value())
                .query((row, number) -> new BookingId(row.getObject("booking_id", UUID.class)))
                .list());
    }
}
