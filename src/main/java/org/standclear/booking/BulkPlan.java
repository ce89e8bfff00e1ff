package org.standclear.booking;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import org.standclear.booking.BulkMoves.Planned;
import org.standclear.booking.BulkMoves.Which;
import org.standclear.booking.NewPlaces.Disturbed;
import org.standclear.people.Assignment;
import org.standclear.people.Courses;
import org.standclear.platform.ids.BookingId;
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

    private final BookingRows rows;
    private final BookingMoves moves;
    private final CouldGo couldGo;
    private final NewPlaces newPlaces;
    private final CellFit fit;
    private final Courses courses;

    BulkPlan(BookingRows rows, BookingMoves moves, CouldGo couldGo, NewPlaces newPlaces, CellFit fit, Courses courses) {
        this.rows = rows;
        this.moves = moves;
        this.couldGo = couldGo;
        this.newPlaces = newPlaces;
        this.fit = fit;
        this.courses = courses;
    }

    List<Planned> of(Which which) {
        List<Planned> standing = standing(which);
        List<Disturbed> disturbed = standing.stream()
                .map(one -> couldGo.from(one.booking(), one.due() != null, moves.now()))
                .toList();
        return planned(standing, disturbed, together(disturbed));
    }

    /**
     * A plan that somebody looked at, as it can be carried out now.
     *
     * @param elsewhere those whose slot is gone, or who were not there yet: each takes the earliest that is left
     * @param lost those of them for whom none is left
     */
    record Now(List<Planned> plan, Set<BookingId> elsewhere, List<Booking> lost) {}

    /**
     * The plan that somebody looked at: everybody who still stands there gets what was seen where it is still free. It is not
     * searched for again, since two searches that ran out of time may differ, and people get what was seen. What is going to
     * be claimed is locked, so it can be carried out as it is said here.
     */
    Now asSeen(Which which, SeenPlan seen) {
        List<Planned> standing = standing(which);
        List<Disturbed> disturbed = new ArrayList<>();
        Map<BookingId, Slot> places = new LinkedHashMap<>();
        Set<BookingId> elsewhere = new LinkedHashSet<>();
        for (Planned one : standing) {
            Booking booking = one.booking();
            Disturbed could = couldGo.fromAll(booking, one.due() != null, moves.now());
            disturbed.add(could);
            Optional<SeenPlan.Place> place = seen.places().getOrDefault(booking.id(), Optional.empty());
            Optional<Slot> same = place.flatMap(
                    wanted -> could.could().stream().filter(wanted::is).findFirst());
            if (same.isPresent() && isPossible(could, same.get(), disturbed, places)) {
                places.put(booking.id(), same.get());
            } else if (place.isPresent() || !seen.places().containsKey(booking.id())) {
                elsewhere.add(booking.id());
            }
        }
        placeInTurn(disturbed, places, elsewhere);
        return new Now(
                planned(standing, disturbed, places),
                elsewhere,
                standing.stream()
                        .map(Planned::booking)
                        .filter(one -> elsewhere.contains(one.id()) && !places.containsKey(one.id()))
                        .toList());
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

    /** Who stands on the cell and can still be moved, those with the nearest due date first. */
    List<Planned> standing(Which which) {
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
        placeInTurn(
                disturbed,
                places,
                disturbed.stream().map(one -> one.booking().id()).collect(Collectors.toSet()));
        return places;
    }

    /** Adds places for those named, one after the other, around the places that there are. */
    private static void placeInTurn(List<Disturbed> disturbed, Map<BookingId, Slot> places, Set<BookingId> whom) {
        disturbed.stream()
                .filter(one -> whom.contains(one.booking().id()))
                .forEach(one -> one.could().stream()
                        .filter(slot -> isClear(one, slot, disturbed, places))
                        .findFirst()
                        .or(() -> one.could().stream()
                                .filter(slot -> isPossible(one, slot, disturbed, places))
                                .findFirst())
                        .ifPresent(slot -> places.put(one.booking().id(), slot)));
    }

    private static boolean isClear(Disturbed one, Slot slot, List<Disturbed> all, Map<BookingId, Slot> places) {
        return all.stream().noneMatch(other -> clash(other, one, slot, places));
    }

    /** Somebody's attendant may have to stay behind for it. */
    private static boolean isPossible(Disturbed one, Slot slot, List<Disturbed> all, Map<BookingId, Slot> places) {
        return all.stream().noneMatch(other -> {
            Slot to = places.get(other.booking().id());
            boolean shared = other.booking().operator().equals(one.booking().operator());
            return to != null
                    && slot.overlaps(to.start(), to.end())
                    && (to.cell().equals(slot.cell()) || shared);
        });
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
