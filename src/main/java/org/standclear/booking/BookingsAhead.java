package org.standclear.booking;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.SectionChange;
import org.standclear.people.StandingBookings;
import org.standclear.platform.ids.PersonId;

/**
 * What people have ahead in this lab, for who is about to take them out of a section; and tells them that it stays. What they
 * have in another lab is not this one's to know.
 */
@Component
class BookingsAhead implements StandingBookings {

    /** So many people are asked for together: a roster may take out thousands. */
    private static final int TOGETHER = 1000;

    private final BookingRows rows;
    private final BookingMoves moves;
    private final SectionLetters letters;

    BookingsAhead(BookingRows rows, BookingMoves moves, SectionLetters letters) {
        this.rows = rows;
        this.moves = moves;
        this.letters = letters;
    }

    @Override
    @Transactional(readOnly = true)
    public int aheadOf(Collection<PersonId> people) {
        return ahead(people).values().stream().mapToInt(List::size).sum();
    }

    @Override
    @Transactional(readOnly = true)
    public Set<PersonId> whoHasAny(Collection<PersonId> people) {
        return ahead(people).keySet();
    }

    @Override
    @Transactional(readOnly = true)
    public Map<PersonId, Integer> aheadOfEach(Collection<PersonId> people) {
        Map<PersonId, Integer> each = new HashMap<>();
        ahead(people).forEach((person, bookings) -> each.put(person, bookings.size()));
        return each;
    }

    private Map<PersonId, List<Booking>> ahead(Collection<PersonId> people) {
        Instant now = moves.now();
        BookingSettings settings = moves.settings();
        List<PersonId> all = new ArrayList<>(new HashSet<>(people));
        Map<PersonId, List<Booking>> ahead = new HashMap<>();
        for (int from = 0; from < all.size(); from += TOGETHER) {
            ahead.putAll(rows.ofOperators(all.subList(from, Math.min(all.size(), from + TOGETHER)), now).stream()
                    .map(life -> life.bookingAsOf(now, settings))
                    .filter(booking -> booking.state().holdsItsSlot())
                    .collect(Collectors.groupingBy(Booking::operator)));
        }
        return ahead;
    }

    @Override
    @Transactional
    public void tellOfLeaving(Map<PersonId, List<SectionChange>> changes) {
        ahead(changes.keySet()).forEach((person, ahead) -> letters.left(person, of(person, changes), ahead));
    }

    @Override
    @Transactional
    public void tellOfReturn(Map<PersonId, List<SectionChange>> changes) {
        ahead(changes.keySet()).keySet().forEach(person -> letters.takenBack(person, of(person, changes)));
    }

    private static List<SectionChange> of(PersonId person, Map<PersonId, List<SectionChange>> changes) {
        return changes.getOrDefault(person, List.of());
    }
}
