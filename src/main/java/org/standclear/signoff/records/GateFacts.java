package org.standclear.signoff.records;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.check.ProgramChecks;
import org.standclear.check.StoredAnswer;
import org.standclear.people.Authorisations;
import org.standclear.people.Duty;
import org.standclear.people.DutyRoster;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;
import org.standclear.signoff.Obstacle;
import org.standclear.signoff.rules.AnswerLine;
import org.standclear.signoff.rules.GateQuestion;
import org.standclear.signoff.rules.Gates;
import org.standclear.signoff.rules.SlotLeft;

/** Reads what the gates of a release are asked about from the features below. */
@Component
class GateFacts {

    private final Bookings bookings;
    private final Cells cells;
    private final ProgramChecks checks;
    private final People people;
    private final Authorisations authorisations;
    private final DutyRoster duty;
    private final EventRows events;
    private final ReleaseRows releases;
    private final WaiverRows waivers;
    private final OneStop oneStop;
    private final LabTime labTime;

    GateFacts(
            Bookings bookings,
            Cells cells,
            ProgramChecks checks,
            People people,
            Authorisations authorisations,
            DutyRoster duty,
            EventRows events,
            ReleaseRows releases,
            WaiverRows waivers,
            OneStop oneStop,
            LabTime labTime) {
        this.bookings = bookings;
        this.cells = cells;
        this.checks = checks;
        this.people = people;
        this.authorisations = authorisations;
        this.duty = duty;
        this.events = events;
        this.releases = releases;
        this.waivers = waivers;
        this.oneStop = oneStop;
        this.labTime = labTime;
    }

    List<Obstacle> obstacles(Booking booking, Cell cell, Instant now) {
        List<Obstacle> obstacles = new ArrayList<>(Gates.ask(question(booking, cell, now)));
        suspended(booking).ifPresent(obstacles::add);
        return List.copyOf(obstacles);
    }

    private Optional<Obstacle> suspended(Booking booking) {
        return booking.state() != BookingState.RELEASED
                ? Optional.empty()
                : releases.latest(booking.id())
                        .filter(release -> release.waits() && !release.holds())
                        .map(release -> new Obstacle(
                                "release-suspended",
                                "The release is suspended. " + release.suspended(),
                                "Somebody else takes over the e-stop and signs for it, or the release is taken back."));
    }

    Cell cell(CellId id) {
        return cells.find(id).orElseThrow();
    }

    GateQuestion question(Booking booking, Cell cell, Instant now) {
        List<Person> staff = duty.onDuty(now);
        PersonId attendantId = booking.attendant();
        Optional<StoredAnswer> answer = answer(booking);
        return new GateQuestion(
                booking,
                cell,
                now,
                SlotLeft.over(booking, now, labTime::time).orElse(null),
                cellObstacles(cell, now, staff),
                person(booking.operator()),
                authorisations.holds(booking.operator(), Duty.OPERATOR, cell.id(), now),
                attendantId == null ? null : person(attendantId),
                attendantId != null && authorisations.holds(attendantId, Duty.ATTENDANT, cell.id(), now),
                attendantId == null ? null : oneStop.elsewhere(attendantId, booking, now),
                oneStop.elsewhere(booking.operator(), booking, now),
                staff,
                notClosedOut(booking, cell),
                answer.orElse(null),
                answer.filter(one -> checks.isInForce(one.id(), booking.course(), booking.operator()))
                        .isPresent(),
                answer.map(one -> AnswerLine.of(one, cell)).orElse("The program has no answer of the check yet."),
                answer.flatMap(one -> waivers.standing(booking.id(), one.id(), now))
                        .orElse(null));
    }

    /** The answer that the booking's latest check gave, if it was for the revision on the booking. */
    Optional<StoredAnswer> answer(Booking booking) {
        return events.lastCheck(booking.id())
                .filter(check -> check.revision().equals(booking.revision()))
                .flatMap(check -> checks.find(check.answer()));
    }

    Person person(PersonId id) {
        return people.find(id).orElseThrow(() -> new IllegalStateException("a booking names nobody's id " + id));
    }

    /** The cell's own obstacles, with the people on duty named as those who can mend them. */
    private List<Obstacle> cellObstacles(Cell cell, Instant now, List<Person> staff) {
        String named = staff.isEmpty() ? "" : " On duty: " + Gates.mendedBy(staff, "") + ".";
        return cells.obstacles(cell.id(), now).stream()
                .map(one -> new Obstacle(one.code(), one.says(), one.mend() + named))
                .toList();
    }

    private List<GateQuestion.NotClosedOut> notClosedOut(Booking booking, Cell cell) {
        return bookings.awaitingCloseOut(cell.id(), booking.id()).stream()
                // not until when: how long somebody's slot is tells of an arrangement, and the next operator reads this
                .map(other -> new GateQuestion.NotClosedOut(
                        people.printedName(other.operator()),
                        labTime.day(other.start()) + " " + labTime.time(other.start())))
                .toList();
    }
}
