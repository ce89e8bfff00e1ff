package org.standclear.booking;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.BookingMoves.Told;
import org.standclear.booking.BookingRequest.Refusal;
import org.standclear.booking.Claims.Claim;
import org.standclear.booking.Claims.Kind;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Stores a booking that no rule but the quota can be against any more; cell and people are locked. */
@Component
class NewBookings {

    private final BookingRows rows;
    private final Claims claims;
    private final Quota quota;
    private final MakeUps makeUps;
    private final PlannedBookings planned;
    private final PeopleRule peopleRule;
    private final BookingRecord record;
    private final Labs labs;

    NewBookings(
            BookingRows rows,
            Claims claims,
            Quota quota,
            MakeUps makeUps,
            PlannedBookings planned,
            PeopleRule peopleRule,
            BookingRecord record,
            Labs labs) {
        this.rows = rows;
        this.claims = claims;
        this.quota = quota;
        this.makeUps = makeUps;
        this.planned = planned;
        this.peopleRule = peopleRule;
        this.record = record;
        this.labs = labs;
    }

    /** Either the booking or why the quota is against it. */
    record Made(@Nullable Booking booking, Optional<Refusal> refusal) {}

    /** Why the quota is against it and no make-up helps. */
    Optional<Refusal> overQuota(BookingRequest request) {
        return quota.refusal(request)
                .filter(refusal -> makeUps.standing(request.wanted().operator(), request.now())
                        .isEmpty());
    }

    /** Within the quota, or beyond it with a make-up, which is used by that. */
    Made withinQuota(BookingRequest request, String words) {
        Optional<Refusal> over = quota.refusal(request);
        Optional<UUID> makeUp = over.isEmpty()
                ? Optional.empty()
                : makeUps.standing(request.wanted().operator(), request.now());
        if (over.isPresent() && makeUp.isEmpty()) {
            return new Made(null, over);
        }
        boolean uncounted = request.isOutsideQuota() || makeUp.isPresent();
        String told = makeUp.isPresent() ? words + " with a make-up" : words;
        Booking booking =
                made(request, uncounted, null, new Told("made", request.wanted().by(), told));
        makeUp.ifPresent(id -> makeUps.use(id, booking.id()));
        return new Made(booking, Optional.empty());
    }

    /** Whatever the quota says. */
    Booking made(BookingRequest request, boolean outsideQuota, @Nullable RevisionId revision, Told told) {
        MakeBooking wanted = request.wanted();
        Slot slot = request.slot();
        BookingLife life = BookingLife.begun(
                new BookingLife.Entry(
                        BookingId.next(),
                        slot.cell(),
                        SqlTime.stored(slot.start()),
                        SqlTime.stored(slot.end()),
                        wanted.operator(),
                        peopleRule.courseOf(wanted),
                        wanted.assignment(),
                        outsideQuota),
                wanted.attendant());
        rows.insert(labs.theLab().id(), life, wanted.by(), request.now());
        UUID id = life.entry().id().value();
        List<Claim> held = new ArrayList<>();
        held.add(Claim.ofBooking(id, Kind.CELL, slot.cell().value(), slot.start(), slot.end()));
        held.add(Claim.ofBooking(id, Kind.OPERATOR, wanted.operator().value(), slot.start(), slot.end()));
        if (wanted.attendant() != null) {
            held.add(Claim.ofBooking(id, Kind.ATTENDANT, wanted.attendant().value(), slot.start(), slot.end()));
        }
        claims.add(held);
        if (revision != null && life.nameProgram(revision).isEmpty()) {
            rows.update(life, request.now());
        }
        Booking booking = life.booking();
        record.tell(booking, request.cell().name(), told);
        return booking;
    }

    /** A booking that staff move keeps the make-up that it was made with, and its place in a plan. */
    void standsFor(BookingId from, BookingId to) {
        makeUps.moveOn(from, to);
        planned.moved(from, to);
    }
}
