package org.standclear.booking;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.standclear.booking.BulkMoves.Planned;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;

/**
 * A plan of a bulk move as a form carries it from the page where somebody looked at it.
 *
 * @param places where each booking was to go; nowhere for who was to lose the turn
 */
record SeenPlan(Map<BookingId, Optional<Place>> places) {

    private static final Pattern LINES = Pattern.compile(";");
    private static final Pattern WORDS = Pattern.compile(" ");

    /** A slot as the plan named it. */
    record Place(CellId cell, Instant start) {

        boolean is(Slot slot) {
            return slot.cell().equals(cell) && slot.start().equals(start);
        }
    }

    static String written(List<Planned> plan) {
        StringBuilder all = new StringBuilder();
        plan.forEach(one -> {
            Slot to = one.to();
            all.append(one.booking().id())
                    .append(to == null ? "" : " " + to.cell() + " " + to.start())
                    .append(';');
        });
        return all.toString();
    }

    /** Nothing when that is no plan. */
    static Optional<SeenPlan> read(String written) {
        Map<BookingId, Optional<Place>> places = new LinkedHashMap<>();
        try {
            LINES.splitAsStream(written).filter(line -> !line.isBlank()).forEach(line -> {
                List<String> words = WORDS.splitAsStream(line.strip()).toList();
                places.put(
                        BookingId.of(words.get(0)),
                        words.size() == 1
                                ? Optional.empty()
                                : Optional.of(new Place(CellId.of(words.get(1)), Instant.parse(words.get(2)))));
            });
        } catch (IllegalArgumentException | DateTimeException | IndexOutOfBoundsException noPlan) {
            return Optional.empty();
        }
        return places.isEmpty() ? Optional.empty() : Optional.of(new SeenPlan(places));
    }
}
