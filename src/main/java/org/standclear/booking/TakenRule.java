package org.standclear.booking;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Predicate;
import org.springframework.stereotype.Component;
import org.standclear.booking.BookingRequest.Refusal;
import org.standclear.booking.Claims.Claim;
import org.standclear.people.People;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** Nobody and nothing in two places: not the cell, not the operator, not the attendant. */
@Component
class TakenRule {

    private final Claims claims;
    private final ClosureRows closures;
    private final BookingMoves moves;
    private final OfferRows offers;
    private final People people;
    private final LabTime labTime;

    TakenRule(
            Claims claims, ClosureRows closures, BookingMoves moves, OfferRows offers, People people, LabTime labTime) {
        this.claims = claims;
        this.closures = closures;
        this.moves = moves;
        this.offers = offers;
        this.people = people;
        this.labTime = labTime;
    }

    /** The cell and the people that the booking would claim. */
    static List<UUID> subjects(MakeBooking wanted) {
        List<UUID> subjects =
                new ArrayList<>(List.of(wanted.cell().value(), wanted.operator().value()));
        if (wanted.attendant() != null) {
            subjects.add(wanted.attendant().value());
        }
        return subjects;
    }

    /** A look without locks at everything that would be claimed. */
    Optional<Refusal> atFirstSight(BookingRequest request) {
        return refusal(request, subjects(request.wanted()), this::isOver);
    }

    /** A look without locks at the cell alone, so that who comes too late for a slot need not wait to be told. */
    Optional<Refusal> cellAtFirstSight(BookingRequest request) {
        return refusal(request, List.of(request.wanted().cell().value()), this::isOver);
    }

    /** The answer that counts; the subjects are locked. Frees what missed bookings still hold. */
    Optional<Refusal> underLock(BookingRequest request) {
        return refusal(request, subjects(request.wanted()), this::settled);
    }

    /** The same for a booking that moves: what it holds itself is not in its way. */
    Optional<Refusal> underLock(BookingRequest request, UUID moving) {
        return refusal(request, subjects(request.wanted()), claim -> moving.equals(claim.booking()) || settled(claim));
    }

    /** The same for who takes an offer: what the offer holds is not in its way. */
    Optional<Refusal> underLockForOffer(BookingRequest request, UUID offer) {
        return refusal(request, subjects(request.wanted()), claim -> offer.equals(claim.offer()) || settled(claim));
    }

    private boolean isOver(Claim claim) {
        return claim.offer() == null ? moves.isDueMissed(claim.booking()) : !offers.holds(claim.offer(), moves.now());
    }

    private boolean settled(Claim claim) {
        return claim.offer() == null
                ? moves.settleIfMissed(claim.booking())
                : offers.freeIfOver(claim.offer(), moves.now());
    }

    private Optional<Refusal> refusal(BookingRequest request, List<UUID> subjects, Predicate<Claim> over) {
        Slot slot = request.slot();
        return claims.on(subjects, slot.start(), slot.end()).stream()
                .filter(claim -> !over.test(claim))
                .findFirst()
                .map(claim -> new Refusal(rule(request, claim), says(request, claim)));
    }

    private static String rule(BookingRequest request, Claim claim) {
        if (claim.subject().equals(request.wanted().cell().value())) {
            return "taken";
        }
        return claim.subject().equals(request.wanted().operator().value()) ? "operator-busy" : "attendant-busy";
    }

    private String says(BookingRequest request, Claim claim) {
        String when = labTime.datedSpan(request.slot().start(), request.slot().end());
        if (claim.subject().equals(request.wanted().cell().value())) {
            return request.cell().name() + ", " + when + ": " + byWhom(claim);
        }
        if (claim.subject().equals(request.wanted().operator().value())) {
            return request.youHave() + " a booking or a turn at an e-stop in that time already: "
                    + labTime.datedSpan(claim.start(), claim.end()) + ". Nobody is in two places.";
        }
        return AttendantRules.busy(people.printedName(new PersonId(claim.subject())));
    }

    private String byWhom(Claim claim) {
        if (claim.offer() != null) {
            return offers.find(claim.offer())
                    .map(offer -> "the slot is offered to somebody on the waiting list until "
                            + labTime.time(offer.until()) + ". If it is not taken, it is free again then.")
                    .orElse("the slot is offered to somebody on the waiting list for some minutes.");
        }
        return claim.closure() == null ? "somebody else has just booked this slot." : kept(claim.closure());
    }

    private String kept(UUID closure) {
        return closures.find(closure)
                .map(found -> "staff keep it for a " + found.kind().words() + " (" + found.words() + ").")
                .orElse("staff keep it at that time.");
    }
}
