package org.standclear.booking;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.CellFit.Offered;
import org.standclear.cell.FeatureNeeds;
import org.standclear.people.AssignmentNeeds.Needs;
import org.standclear.people.People;
import org.standclear.platform.ids.CellId;

/** Tells cells which bookings need what they offer. */
@Component
@Transactional(readOnly = true)
class FeatureBookings implements FeatureNeeds {

    /** Farther ahead than anybody may book. */
    private static final Duration AHEAD = Duration.ofDays(400);

    private final BookingRows rows;
    private final BookingMoves moves;
    private final CellFit fit;
    private final People people;

    FeatureBookings(BookingRows rows, BookingMoves moves, CellFit fit, People people) {
        this.rows = rows;
        this.moves = moves;
        this.fit = fit;
        this.people = people;
    }

    @Override
    public List<Needing> needing(CellId cell, String words) {
        return those(cell, fit.offered(), needs -> needs.features().contains(words));
    }

    @Override
    public List<Needing> unmet(CellId cell) {
        Offered offered = fit.offered();
        return those(cell, offered, needs -> !offered.fits(cell, needs));
    }

    private List<Needing> those(CellId cell, Offered offered, Predicate<Needs> which) {
        Instant now = moves.now();
        return rows.ofCell(cell, now, now.plus(AHEAD)).stream()
                .map(life -> life.bookingAsOf(now, moves.settings()))
                .filter(booking -> BulkPlan.BEFORE_RELEASE.contains(booking.state()))
                .flatMap(booking -> {
                    Needs needs = fit.needs(booking.operator(), booking.assignment(), offered);
                    return which.test(needs) ? Stream.of(needing(booking, needs)) : Stream.empty();
                })
                .toList();
    }

    private Needing needing(Booking booking, Needs needs) {
        return new Needing(
                "/bookings/" + booking.id(), people.printedName(booking.operator()), booking.start(), needs.words());
    }
}
