package org.standclear.booking;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.Turns.Lost;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** What is kept of a lost booking beside the booking itself. */
record LostWords(
        BookingId booking,
        String words,
        @Nullable PersonId excusedBy,
        @Nullable Instant excusedAt) {

    static LostWords of(ResultSet row, int number) throws SQLException {
        UUID by = row.getObject("excused_by", UUID.class);
        String words = row.getString("words");
        return new LostWords(
                new BookingId(row.getObject("id", UUID.class)),
                words == null ? "" : words,
                by == null ? null : new PersonId(by),
                SqlTime.readNullable(row, "excused_at"));
    }

    Lost about(Booking lost) {
        return new Lost(lost, words, excusedBy, excusedAt);
    }
}
