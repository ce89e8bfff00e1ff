package org.standclear.booking.web;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;
import org.standclear.booking.OpenPeriod;
import org.standclear.booking.OpeningHours;
import org.standclear.booking.allocation.Window;
import org.standclear.core.allocation.Span;
import org.standclear.platform.time.LabTime;

/** The times that a request can name: the opening hours of each day of a window in pieces of about two hours. */
@Component
class WindowTimes {

    private static final Duration PIECE = Duration.ofHours(2);

    private final OpeningHours hours;
    private final LabTime labTime;

    WindowTimes(OpeningHours hours, LabTime labTime) {
        this.hours = hours;
        this.labTime = labTime;
    }

    /** A day with its pieces: key and words of each. */
    record Day(String name, String words, Map<String, String> pieces) {}

    /** Every piece by its key, in order. */
    Map<String, Span> pieces(Window window) {
        Map<String, Span> pieces = new LinkedHashMap<>();
        for (OpeningHours.DayHours day : hours.from(window.firstDay(), window.lastDay())) {
            for (OpenPeriod period : day.periods()) {
                Instant at =
                        day.day().atTime(period.opens()).atZone(labTime.zone()).toInstant();
                Instant closes =
                        day.day().atTime(period.closes()).atZone(labTime.zone()).toInstant();
                while (at.isBefore(closes)) {
                    Instant next = at.plus(PIECE);
                    // a rest that is shorter than half a piece goes with the last one
                    Instant until = next.plus(PIECE.dividedBy(2)).isAfter(closes) ? closes : next;
                    pieces.put(at.toString(), new Span(at, until));
                    at = until;
                }
            }
        }
        return pieces;
    }

    List<Day> days(Map<String, Span> pieces) {
        Map<String, Day> days = new LinkedHashMap<>();
        pieces.forEach((key, span) -> days.computeIfAbsent(
                        labTime.date(span.from()).toString(),
                        day -> new Day("can-" + day, labTime.day(span.from()), new LinkedHashMap<>()))
                .pieces()
                .put(key, labTime.times(span.from(), span.until())));
        return List.copyOf(days.values());
    }

    Map<String, String> words(Map<String, Span> pieces) {
        Map<String, String> words = new LinkedHashMap<>();
        words.put("", "no wish");
        pieces.forEach((key, span) -> words.put(key, labTime.datedSpan(span.from(), span.until())));
        return words;
    }
}
