package org.standclear.signoff;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;

/**
 * One round of a list for a booking, about exactly these things; when one of them changes, the round is void.
 *
 * @param round counts from 1 within the booking
 * @param brief whether it is the short list, for an unchanged repeat in the same slot
 * @param closed null while it is being signed
 * @param signatures in the order of signing
 */
public record Sheet(
        UUID id,
        BookingId booking,
        CellId cell,
        int round,
        SignoffList list,
        boolean brief,
        RevisionId revision,
        int cellVersion,
        AnswerId answer,
        PersonId operator,
        PersonId attendant,
        Instant openedAt,
        @Nullable Closed closed,
        List<Signature> signatures) {

    public Sheet {
        signatures = List.copyOf(signatures);
    }

    /** Whether it can still be signed. */
    public boolean open() {
        return closed == null;
    }

    /** The signature of that part. */
    public Optional<Signature> signedBy(Part part) {
        return signatures.stream().filter(one -> one.part() == part).findFirst();
    }

    /** The first part that has not signed; empty when all have. */
    public Optional<Part> next() {
        return list.parts().stream().filter(part -> signedBy(part).isEmpty()).findFirst();
    }

    /** Whether the part may be signed now: the session list in any order, the bench list in its own. */
    public boolean mayBeSigned(Part part) {
        return open()
                && list.parts().contains(part)
                && signedBy(part).isEmpty()
                && (list == SignoffList.SESSION || next().filter(part::equals).isPresent());
    }

    /** How a round ended. */
    public record Closed(Instant at, Outcome outcome, String because) {}

    /** What came of a round. */
    public enum Outcome {
        DONE("done"),
        REFUSED("not released"),
        VOID("void");

        private final String words;

        Outcome(String words) {
            this.words = words;
        }

        /** The outcome as people say it. */
        public String words() {
            return words;
        }
    }
}
