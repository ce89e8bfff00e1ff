package org.standclear.booking;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import org.standclear.booking.BulkMoves.Planned;
import org.standclear.booking.NewPlaces.Disturbed;
import org.standclear.people.Assignment;
import org.standclear.people.Authorisation;
import org.standclear.people.Authorisations;
import org.standclear.people.Courses;
import org.standclear.people.Duty;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * Where everybody on a cell that went down could go. All are placed together; should that fail, each takes the earliest slot
 * that nobody before it in the plan takes.
 */
@Component
class BulkPlan {

    private static final Logger LOG = LoggerFactory.getLogger(BulkPlan.class);
    private static final Set<BookingState> BEFORE_RELEASE =
            Set.of(BookingState.BOOKED, BookingState.CHECKED, BookingState.READY);
    private static final int LOOKED_AT = 90;

    private final BookingRows rows;
    private final BookingMoves moves;
    private final FreeSlots freeSlots;
    private final Claims claims;
    private final NewPlaces newPlaces;
    private final CellFit fit;
    private final Authorisations authorisations;
    private final Courses courses;

    BulkPlan(
            BookingRows rows,
            BookingMoves moves,
            FreeSlots freeSlots,
            Claims claims,
            NewPlaces newPlaces,
            CellFit fit,
            Authorisations authorisations,
            Courses courses) {
        this.rows = rows;
        this.moves = moves;
        this.freeSlots = freeSlots;
        this.claims = claims;
        this.newPlaces = newPlaces;
        this.fit = fit;
        this.authorisations = authorisations;
        this.courses = courses;
    }

    List<Planned> of(CellId cell, Instant until) {
        List<Planned> standing = standing(cell, until);
        List<Disturbed> disturbed = standing.stream()
                .map(one -> disturbed(one, could(one.booking(), cell)))
                .toList();
        Map<BookingId, Slot> places = together(disturbed);
        return standing.stream()
                .map(one -> new Planned(one.booking(), places.get(one.booking().id()), one.due()))
                .toList();
    }

    /**
     * The plan that somebody looked at; empty when bookings changed since, or a slot of it cannot be taken any more. It is
     * not searched for again: two searches that ran out of time may differ, and people get what they saw.
     */
    Optional<List<Planned>> seen(CellId cell, Instant until, String written) {
        List<Planned> standing = standing(cell, until);
        List<String> lines =
                Pattern.compile(";").splitAsStream(written).map(String::strip).toList();
        if (lines.size() != standing.size()) {
            return Optional.empty();
        }
        List<Planned> plan = new ArrayList<>();
        for (int place = 0; place < lines.size(); place++) {
            Planned one = standing.get(place);
            String line = lines.get(place);
            Planned without = new Planned(one.booking(), null, one.due());
            Optional<Planned> same = Stream.concat(
                            Stream.of(without),
                            could(one.booking(), cell).stream()
                                    .map(slot -> new Planned(one.booking(), slot, one.due())))
                    .filter(planned -> BulkMoves.written(List.of(planned)).equals(line + ";"))
                    .findFirst();
            if (same.isEmpty()) {
                return Optional.empty();
            }
            plan.add(same.get());
        }
        return Optional.of(List.copyOf(plan));
    }

    private List<Planned> standing(CellId cell, Instant until) {
        Instant now = moves.now();
        return rows.ofCell(cell, now, until).stream()
                .map(life -> life.bookingAsOf(now, moves.settings()))
                .filter(booking -> BEFORE_RELEASE.contains(booking.state()))
                .map(booking -> new Planned(booking, null, due(booking)))
                .sorted(Comparator.comparing(Planned::due, Comparator.nullsLast(Comparator.naturalOrder()))
                        .thenComparing(one -> one.booking().start())
                        .thenComparing(one -> one.booking().id().value()))
                .toList();
    }

    private @Nullable Instant due(Booking booking) {
        return booking.assignment() == null
                ? null
                : courses.assignmentOf(booking.operator(), booking.assignment())
                        .map(Assignment::due)
                        .orElse(null);
    }

    /** On other cells that fit, not before the booking would have begun; what it holds itself is not in its way. */
    private List<Slot> could(Booking booking, CellId down) {
        Predicate<CellId> fits = fit.fitting(booking.operator(), booking.assignment());
        return freeSlots.instead(booking, LOOKED_AT).stream()
                .filter(slot -> !slot.cell().equals(down) && fits.test(slot.cell()))
                .filter(slot ->
                        !slot.start().isBefore(booking.start()) && !slot.start().isBefore(moves.now()))
                .toList();
    }

    private Disturbed disturbed(Planned one, List<Slot> could) {
        PersonId attendant = one.booking().attendant();
        return new Disturbed(
                one.booking(),
                one.due() != null,
                could,
                attendant == null ? could : attended(one.booking(), attendant, could));
    }

    private List<Slot> attended(Booking booking, PersonId attendant, List<Slot> could) {
        if (could.isEmpty()) {
            return could;
        }
        Instant from =
                could.stream().map(Slot::start).min(Comparator.naturalOrder()).orElseThrow();
        Instant until =
                could.stream().map(Slot::end).max(Comparator.naturalOrder()).orElseThrow();
        List<Claims.Claim> taken = claims.on(List.of(attendant.value()), from, until).stream()
                .filter(claim -> !booking.id().value().equals(claim.booking()))
                .toList();
        List<Authorisation> may = authorisations.of(attendant).stream()
                .filter(one -> one.duty() == Duty.ATTENDANT)
                .toList();
        return could.stream()
                .filter(slot -> may.stream().anyMatch(one -> one.covers(slot.cell(), slot.start())))
                .filter(slot -> taken.stream().noneMatch(claim -> slot.overlaps(claim.start(), claim.end())))
                .toList();
    }

    private Map<BookingId, Slot> together(List<Disturbed> disturbed) {
        try {
            return newPlaces.find(disturbed);
        } catch (RuntimeException | LinkageError failed) {
            LOG.warn("bookings are moved one after the other, since they could not be placed together", failed);
            return oneByOne(disturbed);
        }
    }

    private static Map<BookingId, Slot> oneByOne(List<Disturbed> disturbed) {
        Map<BookingId, Slot> places = new LinkedHashMap<>();
        for (Disturbed one : disturbed) {
            one.could().stream()
                    .filter(slot -> disturbed.stream().noneMatch(other -> clash(other, one, slot, places)))
                    .findFirst()
                    .ifPresent(slot -> places.put(one.booking().id(), slot));
        }
        return places;
    }

    /** The same cell, or the same people, at the same time. */
    private static boolean clash(Disturbed other, Disturbed one, Slot slot, Map<BookingId, Slot> places) {
        Slot to = places.get(other.booking().id());
        boolean shared =
                people(other.booking()).anyMatch(person -> people(one.booking()).anyMatch(person::equals));
        return to != null && slot.overlaps(to.start(), to.end()) && (to.cell().equals(slot.cell()) || shared);
    }

    private static Stream<PersonId> people(Booking booking) {
        return Stream.of(Optional.of(booking.operator()), Optional.ofNullable(booking.attendant()))
                .flatMap(Optional::stream);
    }
}
