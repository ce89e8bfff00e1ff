package org.standclear.signoff.records;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.Bookings.Transition;
import org.standclear.cell.Cell;
import org.standclear.cell.CellState;
import org.standclear.people.Authorisations;
import org.standclear.people.Duty;
import org.standclear.people.Person;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;
import org.standclear.signoff.Handovers;
import org.standclear.signoff.Obstacle;
import org.standclear.signoff.Release;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffList;
import org.standclear.signoff.Turn;

/** Asks people to the e-stop under the locks of booking and cell. */
@Service
class JdbcHandovers implements Handovers {

    private final Bookings bookings;
    private final Authorisations authorisations;
    private final Upkeep upkeep;
    private final GateFacts gates;
    private final TakingOver takingOver;
    private final Turns turns;
    private final ReleaseRows releases;
    private final SheetRows sheets;
    private final Lists lists;
    private final SignoffTrail trail;
    private final Clock clock;

    JdbcHandovers(
            Bookings bookings,
            Authorisations authorisations,
            Upkeep upkeep,
            GateFacts gates,
            TakingOver takingOver,
            Turns turns,
            ReleaseRows releases,
            SheetRows sheets,
            Lists lists,
            SignoffTrail trail,
            Clock clock) {
        this.bookings = bookings;
        this.authorisations = authorisations;
        this.upkeep = upkeep;
        this.gates = gates;
        this.takingOver = takingOver;
        this.turns = turns;
        this.releases = releases;
        this.sheets = sheets;
        this.lists = lists;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Turn> turn(BookingId id) {
        Booking booking = bookings.find(id).orElseThrow();
        PersonId attendant = booking.attendant();
        boolean there = booking.state() == BookingState.RELEASED || booking.state() == BookingState.RUNNING;
        return attendant == null || !there ? Optional.empty() : Optional.of(turns.of(attendant, now()));
    }

    @Override
    @Transactional(readOnly = true)
    public List<PersonId> mayTakeOver(BookingId id) {
        Booking booking = bookings.find(id).orElseThrow();
        Cell cell = gates.cell(booking.cell());
        Optional<Release> release = releases.latest(id);
        Instant now = now();
        return authorisations.holders(Duty.ATTENDANT, cell.id(), now).stream()
                .filter(person -> cell.state() != CellState.RESTRICTED || person.isLabStaff())
                .map(Person::id)
                .filter(person -> !booking.involves(person))
                .filter(person -> release.flatMap(one -> takingOver.otherPart(person, one))
                        .isEmpty())
                .filter(person -> takingOver.refusals(person, booking, now).isEmpty())
                .toList();
    }

    @Override
    @Transactional
    public Asked ask(BookingId id, PersonId next, PersonId by) {
        Instant now = now();
        Upkeep.Current current = upkeep.lock(id, now);
        Booking booking = current.booking();
        List<Obstacle> refusals = new ArrayList<>(takingOver.refusals(next, booking, now));
        releases.latest(id)
                .flatMap(release -> takingOver.otherPart(next, release))
                .ifPresent(refusals::add);
        if (!authorisations.holds(next, Duty.ATTENDANT, booking.cell(), now)) {
            refusals.add(new Obstacle(
                    "attendant-not-authorised",
                    gates.person(next).printedName() + " is not authorised at this e-stop.",
                    "Choose somebody else."));
        }
        if (!refusals.isEmpty()) {
            return new Asked.Refused(refusals.get(0).line());
        }
        if (booking.state() != BookingState.RUNNING) {
            return kept(bookings.nameAttendant(id, next, by), id, now);
        }
        closeOpen(id, "Somebody else was asked to take over.", now);
        Release release = releases.latest(id).orElseThrow();
        if (next.equals(release.attendant())) {
            return new Asked.Refused(gates.person(next).printedName() + " is at this e-stop now.");
        }
        lists.openHandover(release, next, now);
        trail.askedToTakeOver(booking, next, by);
        return new Asked.Opened();
    }

    @Override
    @Transactional
    public Asked left(BookingId id, PersonId by) {
        Instant now = now();
        Booking booking = upkeep.lock(id, now).booking();
        if (booking.state() == BookingState.RUNNING) {
            return new Asked.Refused("The arm may move: press the e-stop and log it, then name somebody else.");
        }
        return kept(bookings.askForAttendant(id, by), id, now);
    }

    private Asked kept(Transition transition, BookingId id, Instant now) {
        if (transition instanceof Transition.Refused refused) {
            return new Asked.Refused(refused.says());
        }
        Upkeep.Current current = upkeep.lock(id, now);
        lists.due(current.booking(), current.cell(), now);
        return new Asked.Opened();
    }

    @Override
    @Transactional
    public void giveUp(BookingId id, PersonId by) {
        upkeep.lock(id, now());
        closeOpen(id, "Given up: whoever is at the e-stop stays there.", now());
    }

    private void closeOpen(BookingId id, String because, Instant now) {
        open(id).ifPresent(sheet -> {
            sheets.close(sheet.id(), Sheet.Outcome.VOID, because, now);
            trail.sheetVoid(sheet, because);
        });
    }

    private Optional<Sheet> open(BookingId id) {
        return sheets.open(id).filter(sheet -> sheet.list() == SignoffList.HANDOVER);
    }

    @Override
    @Transactional(readOnly = true)
    public boolean awaits(BookingId id, PersonId person) {
        return open(id).filter(sheet -> sheet.attendant().equals(person)).isPresent();
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
