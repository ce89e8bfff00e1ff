package org.standclear.run.records;

import java.util.Objects;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.people.SigningPins;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.LabTime;
import org.standclear.run.RunLog.Logged;
import org.standclear.run.RunLog.Witness;

/** Who may log what, and whether a technician or an instructor vouches for a reset. */
@Component
class Witnesses {

    private final People people;
    private final SigningPins pins;
    private final LabTime labTime;

    Witnesses(People people, SigningPins pins, LabTime labTime) {
        this.people = people;
        this.pins = pins;
        this.labTime = labTime;
    }

    /** Operator, attendant, staff, or the screen at the cell. */
    boolean mayLog(Booking booking, PersonId by) {
        return booking.involves(by) || isStaffOrScreen(by);
    }

    /** The operator, staff, or the screen at the cell; the attendant has nothing else to do. */
    boolean mayStart(Booking booking, PersonId by) {
        return booking.operator().equals(by) || isStaffOrScreen(by);
    }

    private boolean isStaffOrScreen(PersonId by) {
        return people.find(by)
                .filter(person -> person.isLabStaff() || person.is(Role.BENCH))
                .isPresent();
    }

    String names(Booking booking) {
        PersonId attendant = booking.attendant();
        String operator = people.printedName(booking.operator());
        return attendant == null ? operator : operator + ", " + people.printedName(attendant);
    }

    /** Why the stop is not reset by this person; empty when they may. */
    Optional<Logged> refusal(Witness witness) {
        Person signer = people.find(witness.signer()).orElse(null);
        if (signer == null || !signer.active() || !signer.isLabStaff()) {
            return refused("not-staff", "A technician or an instructor records the reset of a stop.");
        }
        boolean ownDevice = witness.account().equals(witness.signer());
        if (!ownDevice
                && people.find(witness.account())
                        .filter(one -> one.is(Role.BENCH))
                        .isEmpty()) {
            return refused("not-the-signer", "Each person signs as themselves.");
        }
        return ownDevice
                ? Optional.empty()
                : pinRefusal(
                        signer, Objects.requireNonNullElse(witness.pin(), "").strip());
    }

    private Optional<Logged> pinRefusal(Person signer, String pin) {
        SigningPins.Outcome outcome = pins.check(signer.id(), pin);
        if (outcome instanceof SigningPins.Outcome.Wrong wrong) {
            return refused(
                    "pin",
                    "That is not the signing PIN of " + signer.printedName() + "; tries left: " + wrong.triesLeft()
                            + ".");
        }
        if (outcome instanceof SigningPins.Outcome.Paused paused) {
            return refused(
                    "pin", "Too many wrong tries; the PIN is taken again at " + labTime.time(paused.until()) + ".");
        }
        return outcome instanceof SigningPins.Outcome.NotSet
                ? refused("pin", signer.printedName() + " has no signing PIN yet.")
                : Optional.empty();
    }

    private static Optional<Logged> refused(String code, String says) {
        return Optional.of(new Logged.Refused(code, says));
    }
}
