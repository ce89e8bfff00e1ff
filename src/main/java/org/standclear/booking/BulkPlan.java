package org.standclear.booking;

import java.time.Instant;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import org.standclear.booking.BulkMoves.Planned;
import org.standclear.booking.BulkMoves.Which;
import org.standclear.booking.NewPlaces.Disturbed;
import org.standclear.cell.Cell;
import org.standclear.cell.CellState;
import org.standclear.cell.Cells;
import org.standclear.people.Assignment;
import org.standclear.people.Authorisation;
import org.standclear.people.Authorisations;
import org.standclear.people.Courses;
import org.standclear.people.Duty;
import org.standclear.people.People;
import org.standclear.people.Person;
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
    static final Set<BookingState> BEFORE_RELEASE =
            Set.of(BookingState.BOOKED, BookingState.CHECKED, BookingState.READY);
    private static final int LOOKED_AT = 90;

    private final BookingRows rows;
    private final BookingMoves moves;
    private final FreeSlots freeSlots;
    private final Claims claims;
    private final NewPlaces newPlaces;
    private final CellFit fit;
    private final Authorisations authorisations;
    private final Cells cells;
    private final People people;
    private final Courses courses;

    BulkPlan(
            BookingRows rows,
            BookingMoves moves,
            FreeSlots freeSlots,
            Claims claims,
            NewPlaces newPlaces,
            CellFit fit,
            Authorisations authorisations,
            Cells cells,
            People people,
            Courses courses) {
        this.rows = rows;
        this.moves = moves;
        this.freeSlots = freeSlots;
        this.claims = claims;
        this.newPlaces = newPlaces;
        this.fit = fit;
        this.authorisations = authorisations;
        this.cells = cells;
        this.people = people;
        this.courses = courses;
    }

    List<Planned> of(Which which) {
        List<Planned> standing = standing(which);
        List<Disturbed> disturbed = disturbed(standing, which.cell());
        return planned(standing, disturbed, together(disturbed));
    }

    /**
     * The plan that somebody looked at; empty when bookings changed since, or a slot of it cannot be taken any more. It is
     * not searched for again: two searches that ran out of time may differ, and people get what they saw.
     */
    Optional<List<Planned>> seen(Which which, String written) {
        List<Planned> standing = standing(which);
        List<String> lines =
                Pattern.compile(";").splitAsStream(written).map(String::strip).toList();
        if (lines.size() != standing.size()) {
            return Optional.empty();
        }
        List<Disturbed> disturbed = disturbed(standing, which.cell());
        Map<BookingId, Slot> places = new LinkedHashMap<>();
        for (int place = 0; place < lines.size(); place++) {
            Planned one = standing.get(place);
            String line = lines.get(place) + ";";
            if (BulkMoves.written(List.of(one)).equals(line)) {
                continue;
            }
            Optional<Slot> same = disturbed.get(place).could().stream()
                    .filter(slot -> BulkMoves.written(List.of(new Planned(one.booking(), slot, one.due(), false)))
                            .equals(line))
                    .findFirst();
            if (same.isEmpty()) {
                return Optional.empty();
            }
            places.put(one.booking().id(), same.get());
        }
        return Optional.of(planned(standing, disturbed, places));
    }

    private List<Disturbed> disturbed(List<Planned> standing, CellId down) {
        return standing.stream()
                .map(one -> disturbed(one, could(one.booking(), down)))
                .toList();
    }

    private static List<Planned> planned(
            List<Planned> standing, List<Disturbed> disturbed, Map<BookingId, Slot> places) {
        Set<BookingId> attended = attended(disturbed, places);
        return standing.stream()
                .map(one -> new Planned(
                        one.booking(),
                        places.get(one.booking().id()),
                        one.due(),
                        attended.contains(one.booking().id())))
                .toList();
    }

    /** Whose attendant can come along: free there, and not planned for anything else in the same act. */
    private static Set<BookingId> attended(List<Disturbed> disturbed, Map<BookingId, Slot> places) {
        Set<BookingId> attended = new HashSet<>();
        for (Disturbed one : disturbed) {
            PersonId attendant = one.booking().attendant();
            Slot slot = places.get(one.booking().id());
            if (attendant == null || slot == null || !one.withAttendant().contains(slot)) {
                continue;
            }
            boolean wanted = disturbed.stream()
                    .filter(other -> !other.equals(one))
                    .anyMatch(other -> {
                        Slot to = places.get(other.booking().id());
                        boolean there = attendant.equals(other.booking().operator())
                                || (attendant.equals(other.booking().attendant())
                                        && attended.contains(other.booking().id()));
                        return there && to != null && slot.overlaps(to.start(), to.end());
                    });
            if (!wanted) {
                attended.add(one.booking().id());
            }
        }
        return attended;
    }

    private List<Planned> standing(Which which) {
        Instant now = moves.now();
        return rows.ofCell(which.cell(), now, which.until()).stream()
                .map(life -> life.bookingAsOf(now, moves.settings()))
                .filter(booking -> BEFORE_RELEASE.contains(booking.state()))
                .filter(booking -> !which.unfitOnly()
                        || !fit.fitting(booking.operator(), booking.assignment())
                                .test(which.cell()))
                .map(booking -> new Planned(booking, due(booking)))
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
        Set<CellId> staffOnly = staffOnly(attendant);
        return could.stream()
                .filter(slot -> !staffOnly.contains(slot.cell()))
                .filter(slot -> may.stream().anyMatch(one -> one.covers(slot.cell(), slot.start())))
                .filter(slot -> taken.stream().noneMatch(claim -> slot.overlaps(claim.start(), claim.end())))
                .toList();
    }

    /** Restricted cells, unless the attendant is lab staff: the desk would let nobody else attend there. */
    private Set<CellId> staffOnly(PersonId attendant) {
        if (people.find(attendant).filter(Person::isLabStaff).isPresent()) {
            return Set.of();
        }
        return cells.all().stream()
                .filter(cell -> cell.state() == CellState.RESTRICTED)
                .map(Cell::id)
                .collect(Collectors.toSet());
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
                both(other.booking()).anyMatch(person -> both(one.booking()).anyMatch(person::equals));
        return to != null && slot.overlaps(to.start(), to.end()) && (to.cell().equals(slot.cell()) || shared);
    }

    private static Stream<PersonId> both(Booking booking) {
        return Stream.of(Optional.of(booking.operator()), Optional.ofNullable(booking.attendant()))
                .flatMap(Optional::stream);
    }
}
