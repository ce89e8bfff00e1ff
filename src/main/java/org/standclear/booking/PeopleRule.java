package org.standclear.booking;

import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.BookingRequest.Refusal;
import org.standclear.people.Assignment;
import org.standclear.people.Courses;
import org.standclear.people.Duty;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/**
 * The people of a booking: an authorised operator, an attendant who may, an assignment that is the operator's, and a cell
 * that has what both need.
 */
@Component
class PeopleRule implements BookingRequest.Rule {

    private final Courses courses;
    private final CellFit fit;
    private final LabTime labTime;

    PeopleRule(Courses courses, CellFit fit, LabTime labTime) {
        this.courses = courses;
        this.fit = fit;
        this.labTime = labTime;
    }

    @Override
    public Optional<Refusal> refusal(BookingRequest request) {
        return byWhom(request)
                .or(() -> operator(request))
                .or(() -> attendant(request))
                .or(() -> course(request))
                .or(() -> fit.refusal(request));
    }

    /**
     * The same for a booking that staff move: it stays for what it was made for, even if its operator has left that course
     * since, or nobody could be moved off a cell that went down.
     */
    Optional<Refusal> refusalOfMove(BookingRequest request) {
        return byWhom(request)
                .or(() -> operator(request))
                .or(() -> attendant(request))
                .or(() -> fit.refusal(request));
    }

    /** Whether the operator is authorised for the whole of the slot. */
    static boolean mayOperate(Parties parties, PersonId operator, Slot slot) {
        // to the last instant of the slot; the end itself is not part of it
        Instant last = slot.end().minusSeconds(1);
        return parties.hold(operator, Duty.OPERATOR, slot.cell(), slot.start())
                && parties.hold(operator, Duty.OPERATOR, slot.cell(), last);
    }

    /** The assignment's course when there is an assignment, else the one asked for. */
    @Nullable
    CourseId courseOf(MakeBooking wanted) {
        var assignment = wanted.assignment();
        if (assignment == null) {
            return wanted.course();
        }
        return courses.assignmentOf(wanted.operator(), assignment)
                .map(Assignment::course)
                .orElse(wanted.course());
    }

    private static Optional<Refusal> byWhom(BookingRequest request) {
        if (request.forOneself() || request.by().isLabStaff()) {
            return Optional.empty();
        }
        return Refusal.of("booked-for-oneself", "Only lab staff book for somebody else.");
    }

    private Optional<Refusal> operator(BookingRequest request) {
        Slot slot = request.slot();
        if (mayOperate(request.parties(), request.wanted().operator(), slot)) {
            return Optional.empty();
        }
        return Refusal.of(
                "operator-authorisation",
                request.you() + (request.forOneself() ? " are" : " is") + " not authorised as operator on "
                        + request.cell().name() + " on " + labTime.day(slot.start())
                        + ". Lab staff enter the authorisation after the induction.");
    }

    private Optional<Refusal> attendant(BookingRequest request) {
        var attendant = request.wanted().attendant();
        if (attendant == null) {
            return Optional.empty();
        }
        return AttendantRules.refusal(
                        request.parties(), request.cell(), request.wanted().operator(), attendant, request.slot())
                .map(says -> new Refusal("attendant", says));
    }

    private Optional<Refusal> course(BookingRequest request) {
        var operator = request.wanted().operator();
        var assignment = request.wanted().assignment();
        if (assignment != null) {
            return courses.assignmentOf(operator, assignment).isPresent()
                    ? Optional.empty()
                    : Refusal.of("assignment", "That assignment is not one of yours; choose one from the list.");
        }
        var course = request.wanted().course();
        boolean fits = course == null
                || request.by().isLabStaff()
                || courses.enrolmentsOf(operator).stream()
                        .anyMatch(enrolment -> enrolment.course().equals(course));
        return fits
                ? Optional.empty()
                : Refusal.of("course", request.youHave() + " no place in that course; choose one from the list.");
    }
}
