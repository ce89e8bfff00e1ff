package org.standclear.signoff.records;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.time.LabTime;
import org.standclear.signoff.Release;

/**
 * One person, one e-stop, and one run: whom another release binds. Acts that bind the same person follow one another
 * ({@link PeopleLocks}); what the database's unique indexes refuse all the same is undone here.
 */
@Component
class OneStop {

    private final Bookings bookings;
    private final Cells cells;
    private final ReleaseRows releases;
    private final LapseFacts lapseFacts;
    private final Suspensions suspensions;
    private final LabTime labTime;
    private final PeopleLocks locks;
    private final TransactionTemplate nested;

    OneStop(
            Bookings bookings,
            Cells cells,
            ReleaseRows releases,
            LapseFacts lapseFacts,
            Suspensions suspensions,
            LabTime labTime,
            PeopleLocks locks,
            PlatformTransactionManager transactions) {
        this.bookings = bookings;
        this.cells = cells;
        this.releases = releases;
        this.lapseFacts = lapseFacts;
        this.suspensions = suspensions;
        this.labTime = labTime;
        this.locks = locks;
        nested = new TransactionTemplate(transactions);
        nested.setPropagationBehavior(TransactionDefinition.PROPAGATION_NESTED);
    }

    /** The cell where the person operates or attends a run now, other than that of the booking; null when nowhere. */
    @Nullable
    String elsewhere(PersonId person, Booking booking, Instant now) {
        return bookings.inRun(person).stream()
                .filter(other -> !other.id().equals(booking.id()))
                .map(other -> binds(other.cell(), other.start(), other.end(), now))
                .findFirst()
                .or(() -> bookings.of(person, now).stream()
                        .filter(other -> !other.id().equals(booking.id()))
                        .filter(other -> waitsForItsStart(other, now))
                        .map(other -> name(other.cell()))
                        .findFirst())
                .or(() -> releases.binding(person, booking.id(), now)
                        .map(other -> binds(other.cell(), other.starts(), other.ends(), now)))
                .orElse(null);
    }

    /** A release that ran out unseen binds nobody. */
    private boolean waitsForItsStart(Booking other, Instant now) {
        return other.state() == BookingState.RELEASED
                && releases.latest(other.id())
                        .filter(release -> release.startBy().isAfter(now))
                        .isPresent();
    }

    /** Which run, when it is one of days ago: whoever reads this would not think of it. */
    private String binds(CellId cell, Instant starts, Instant ends, Instant now) {
        return ends.isBefore(now)
                ? name(cell) + " (the run of " + labTime.full(starts) + "-" + labTime.time(ends)
                        + ", which nobody has finished)"
                : name(cell);
    }

    private String name(CellId cell) {
        return cells.find(cell).map(Cell::name).orElse("another cell");
    }

    /**
     * Who left an e-stop before a start is free of it from then on, though nobody has looked at that cell since. It is
     * written by the numbers and into the record of the lab whose booking that is. A booking that somebody else has locked
     * is left to their look: waiting for it with the lock of this one could wait for ever.
     */
    void free(PersonId attendant, Booking booking, Instant now) {
        releases.waitingWith(attendant).stream()
                .filter(waiting -> !waiting.booking().equals(booking.id()))
                .forEach(waiting -> LabScope.run(
                        waiting.lab(),
                        () -> bookings.lockUnlessLocked(waiting.booking())
                                .ifPresent(left -> freeFrom(attendant, left, now))));
    }

    private void freeFrom(PersonId attendant, Booking left, Instant now) {
        if (left.state() != BookingState.RELEASED || attendant.equals(left.attendant())) {
            return;
        }
        Cell cell = cells.find(left.cell()).orElseThrow();
        releases.latest(left.id())
                .filter(Release::waits)
                .ifPresent(release -> suspensions.check(left, lapseFacts.question(release, left, cell, now), now));
    }

    /**
     * What the act that binds these people came to; empty, with nothing of it kept, when another release bound one of them
     * meanwhile. The caller has locked the booking and its cell.
     */
    <T> Optional<T> unlessBound(List<PersonId> people, Supplier<T> act) {
        locks.take(people);
        try {
            return Optional.of(Objects.requireNonNull(nested.execute(status -> act.get())));
        } catch (DuplicateKeyException twice) {
            String says = Objects.toString(twice.getMessage(), "").toLowerCase(Locale.ROOT);
            if (says.contains("signoff_releases_operator_uq")
                    || says.contains("signoff_releases_attendant_uq")
                    || says.contains("signoff_releases_cell_uq")) {
                return Optional.empty();
            }
            throw twice;
        }
    }
}
