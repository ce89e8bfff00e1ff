package org.standclear.signoff;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;

/** The two lists at a cell: asks item by item, compares, takes signatures, and releases. */
public interface SignoffDesk {

    /** Brings the booking up to date, opens the list that is due, and says where it stands. */
    Standing look(BookingId booking);

    /**
     * What the account is asked next on the sheet for that part: the first item it has not answered, or the signature.
     * Shows answers of this account only, so nobody reads those of another before giving their own.
     */
    Step step(Sheet sheet, Part part, PersonId account);

    /** Takes an answer to one item and compares it with what is known; nothing is signed yet. */
    Entered enter(EnterAnswer answer);

    /** Takes the account's latest answer back, to give it again. */
    void stepBack(UUID sheet, Part part, PersonId account);

    /** Signs the part. The last signature of the bench list releases. */
    Signed sign(SignPart signing);

    /** People who may release the booking now, by printed name. */
    List<PersonId> mayRelease(BookingId booking);

    /**
     * An answer to one item.
     *
     * @param account whose session or screen it came from
     * @param values by field name, as typed
     */
    record EnterAnswer(UUID sheet, Part part, PersonId account, int item, Map<String, String> values) {

        public EnterAnswer {
            values = Map.copyOf(values);
        }
    }

    /** What came of an answer. */
    sealed interface Entered {

        /** It is kept until the signature. */
        record Kept() implements Entered {}

        /** It cannot be read, or it stops the list; says what to do. Nothing is kept. */
        record Refused(String field, String says) implements Entered {}

        /** It does not agree with what is known. That is in the record; the item is asked again. */
        record Disagrees(Disagreement disagreement) implements Entered {}

        /** The list went on or was closed since the page was shown. */
        record MovedOn(String says) implements Entered {}
    }

    /**
     * A signature.
     *
     * @param account whose session or screen it came from; the answers are those it entered
     * @param signer who signs
     * @param pin the signer's PIN on a shared screen; null on the signer's own device
     * @param statementSha256 of the statement that the signer saw
     */
    record SignPart(
            UUID sheet,
            Part part,
            PersonId account,
            PersonId signer,
            @Nullable String pin,
            String statementSha256) {}

    /** What came of a signature. */
    sealed interface Signed {

        /** It is kept; more is to be signed. */
        record Kept(Signature signature) implements Signed {}

        /** The booking is released. */
        record Released(Release release) implements Signed {}

        /** It is kept, but not released: answers of two people disagree. A new round begins. */
        record NotReleased(String says) implements Signed {}

        /** Nothing was signed; says why and who can mend it. */
        record Refused(String field, List<Obstacle> obstacles) implements Signed {}

        /** The list went on or was closed since the page was shown. */
        record MovedOn(String says) implements Signed {}
    }

    /** What an account is asked. */
    sealed interface Step {

        /** An item; {@code position} of {@code of}, the signature counted. */
        record Ask(ListItem item, int position, int of) implements Step {}

        /** The signature under these answers. */
        record Sign(String meaning, Statement statement, List<Answered> answered, int position, int of)
                implements Step {}
    }

    /** One of the account's own answers in words. */
    record Answered(int item, String challenge, String words) {}

    /** Word for word what is signed. */
    record Statement(String text, String sha256) {}

    /**
     * Where a booking stands at the bench.
     *
     * @param sheet the list that is open; empty when none is due
     * @param obstacles what stands in the way of the next step, the gates in their order
     * @param release the latest release, whether it holds or not
     * @param notReleased why the round before was refused, without the values; empty when it was not
     */
    record Standing(
            Preparation.Prepared prepared,
            Optional<Sheet> sheet,
            List<Obstacle> obstacles,
            Optional<Release> release,
            String notReleased) {

        public Standing {
            obstacles = List.copyOf(obstacles);
        }
    }
}
