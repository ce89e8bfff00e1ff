package org.standclear.signoff;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * Cards that were written on paper while the program could not be reached, typed in afterwards. Each is late, names who
 * typed it, and is no release: nothing starts by it.
 */
public interface PaperCards {

    /** The latest cards, latest first. */
    List<PaperCard> latest(int atMost);

    /** Keeps a card; the caller has checked that the person is staff. */
    Typed type(PaperCard card);

    /**
     * What stands on a card.
     *
     * @param writtenAt when the bench list was signed on paper
     * @param fingerprintEnd the last four characters
     * @param passes a number, or "until stopped"
     * @param happened what went on, in words
     */
    record PaperCard(
            UUID id,
            CellId cell,
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
