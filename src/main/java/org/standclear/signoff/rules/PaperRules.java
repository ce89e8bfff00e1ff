package org.standclear.signoff.rules;

import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.Booking;
import org.standclear.people.Person;
import org.standclear.signoff.PaperCards.PaperCard;
import org.standclear.signoff.PaperCards.Typed;

/** Why a card from paper is not kept: nobody's name on it, another cell's booking, a time that cannot be. */
public final class PaperRules {

    private PaperRules() {}

    /**
     * The facts about a card.
     *
     * @param booking null when the card names none, or none that there is
     * @param cellSince when the cell's first version came in force
     */
    public record Question(
            PaperCard card,
            @Nullable Person operator,
            @Nullable Person attendant,
            @Nullable Person releaser,
            @Nullable Booking booking,
            Instant cellSince) {}

    /** The first thing that is wrong; empty when nothing is. */
    public static Optional<Typed> refusal(Question question) {
        return nobody(question)
                .or(() -> threePeople(question))
                .or(() -> booking(question))
                .or(() -> time(question));
    }

    private static Optional<Typed> nobody(Question question) {
        if (question.operator() == null) {
            return refused("operator", "There is no such person; choose the operator from the list.");
        }
        if (question.attendant() == null) {
            return refused("attendant", "There is no such person; choose the attendant from the list.");
        }
        Person releaser = question.releaser();
        return releaser == null || !releaser.isLabStaff()
                ? refused("releaser", "Only a technician or an instructor releases, on paper too.")
                : Optional.empty();
    }

    private static Optional<Typed> threePeople(Question question) {
        PaperCard card = question.card();
        boolean three = !card.operator().equals(card.attendant())
                && !card.operator().equals(card.releaser())
                && !card.attendant().equals(card.releaser());
        return three
                ? Optional.empty()
                : refused("releaser", "Operator, e-stop attendant and releaser are three people.");
    }

    private static Optional<Typed> booking(Question question) {
        PaperCard card = question.card();
        Booking booking = question.booking();
        if (card.booking() == null) {
            return Optional.empty();
        }
        if (booking == null || !booking.cell().equals(card.cell())) {
            return refused("booking", "That is no booking of this cell; choose one from the list.");
        }
        return booking.operator().equals(card.operator())
                ? Optional.empty()
                : refused("operator", "The booking is somebody else's; the operator of the booking signs the card.");
    }

    private static Optional<Typed> time(Question question) {
        PaperCard card = question.card();
        Booking booking = question.booking();
        if (card.writtenAt().isAfter(card.typedAt())) {
            return refused("time", "That is still to come. Write when the card was signed.");
        }
        if (card.writtenAt().isBefore(question.cellSince())) {
            return refused("time", "The cell was not in the lab then. Look at the year on the card.");
        }
        return booking != null && card.writtenAt().isBefore(booking.start())
                ? refused("time", "That is before the booking begins. Look at day and time on the card.")
                : Optional.empty();
    }

    private static Optional<Typed> refused(String field, String says) {
        return Optional.of(new Typed.Refused(field, says));
    }
}
