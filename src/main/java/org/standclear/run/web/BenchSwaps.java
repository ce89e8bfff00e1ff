package org.standclear.run.web;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.people.DutyRoster;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.signoff.Handovers;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffDesk.Standing;
import org.standclear.signoff.SignoffList;
import org.standclear.signoff.Turn;

/** The turn at the e-stop, and who could take the next one. */
@Component
class BenchSwaps {

    private final Handovers handovers;
    private final People people;
    private final DutyRoster duty;
    private final LabTime labTime;

    BenchSwaps(Handovers handovers, People people, DutyRoster duty, LabTime labTime) {
        this.handovers = handovers;
        this.people = people;
        this.duty = duty;
        this.labTime = labTime;
    }

    /** Whether this screen asks the next attendant to sign now. */
    static boolean takesOver(Standing standing, SignedInPerson me) {
        return handover(standing)
                .filter(sheet -> me.is(Role.BENCH) || sheet.attendant().equals(me.id()))
                .isPresent();
    }

    private static Optional<Sheet> handover(Standing standing) {
        return standing.sheet().filter(sheet -> sheet.list() == SignoffList.HANDOVER);
    }

    /** Whether somebody is asked to sign for the booking's e-stop who is not on the booking yet. */
    boolean awaits(Booking booking, SignedInPerson me) {
        return booking.state() == BookingState.RUNNING && handovers.awaits(booking.id(), me.id());
    }

    BenchView.Swap of(Standing standing) {
        Booking booking = standing.prepared().booking();
        PersonId attendant = booking.attendant();
        Turn turn = handovers.turn(booking.id()).orElse(null);
        List<PersonId> may = handovers.mayTakeOver(booking.id());
        Set<PersonId> here = duty.onDuty(labTime.now()).stream().map(Person::id).collect(Collectors.toSet());
        return new BenchView.Swap(
                attendant == null ? "" : people.printedName(attendant),
                turn == null ? "" : labTime.time(turn.until()),
                turn == null ? "" : labTime.iso(turn.until()),
                turn != null && turn.over(),
                handover(standing)
                        .map(sheet -> people.printedName(sheet.attendant()))
                        .orElse(""),
                named(may.stream().filter(here::contains)),
                named(may.stream().filter(id -> !here.contains(id))),
                booking.state() == BookingState.RELEASED);
    }

    /** "Turn over: swap ..." once it is; else nothing. */
    static String told(BenchView.@Nullable Swap swap) {
        return swap == null || !swap.over() || !swap.asked().isEmpty()
                ? ""
                : "The turn of " + swap.attendant() + " is over: swap the attendant now.";
    }

    private List<BenchView.Named> named(Stream<PersonId> ids) {
        return ids.map(id -> new BenchView.Named(id.toString(), people.printedName(id)))
                .toList();
    }
}
