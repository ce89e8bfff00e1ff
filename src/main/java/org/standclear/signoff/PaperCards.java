package org.standclear.signoff;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.Booking;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * Cards that were written on paper while the program could not be reached, typed in afterwards. Each is late, names who
 * typed it, and is no release: nothing starts by it.
 */
public interface PaperCards {

    /** The latest cards, latest first. */
    List<PaperCard> latest(int atMost);

    /** The cards that were written for a booking, first to last. */
    List<PaperCard> of(BookingId booking);

    /** The cards on which the person stands as operator, attendant or releaser, latest first. */
    List<PaperCard> of(PersonId person);

    /** Bookings of the cell for which a card may have been written, whatever came of them; latest first. */
    List<Booking> bookings(CellId cell, Instant since);

    /** What stands on a card, in one line of words, late entry and who typed it included. */
    String words(PaperCard card);

    /** Keeps a card; the caller has checked that the person is staff. */
    Typed type(PaperCard card);

    /**
     * What stands on a card.
     *
     * @param booking for which it was written; null for a run nobody had booked
     * @param writtenAt when the bench list was signed on paper
     * @param fingerprintEnd the last four characters
     * @param passes a number, or "until stopped"
     * @param happened what went on, in words
     */
    record PaperCard(
            UUID id,
            CellId cell,
            @Nullable BookingId booking,
            Instant writtenAt,
            PersonId operator,
            PersonId attendant,
            PersonId releaser,
            String program,
            String fingerprintEnd,
            String power,
            double overridePercent,
            String sensitivity,
            String toolCode,
            String passes,
            String happened,
            PersonId typedBy,
            Instant typedAt) {}

    /** What came of typing one in. */
    sealed interface Typed {

        /** It is on record, as a late entry. */
        record Kept(PaperCard card) implements Typed {}

        /** It is not: says why, and with which field. */
        record Refused(String field, String says) implements Typed {}
    }
}
