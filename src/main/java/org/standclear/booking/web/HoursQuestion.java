package org.standclear.booking.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.OpeningHours.DayHours;
import org.standclear.booking.SlotCalendar;

/** Which bookings other hours would leave outside, and whether the sender has seen exactly these. */
@Component
class HoursQuestion {

    private final SlotCalendar calendar;
    private final OwnBookings own;

    HoursQuestion(SlotCalendar calendar, OwnBookings own) {
        this.calendar = calendar;
        this.own = own;
    }

    /**
     * @param links addresses of the bookings with what they are
     * @param ids all of them in one line, for the form that confirms
     */
    record Asked(Map<String, String> links, String ids, boolean isConfirmed) {}

    Asked asking(UnaryOperator<DayHours> others, @Nullable String confirmed) {
        List<Booking> outside = calendar.leftOutside(others);
        Map<String, String> links = new LinkedHashMap<>();
        outside.forEach(booking ->
                links.put("/bookings/" + booking.id(), own.title(booking) + ": " + own.name(booking.operator())));
        String ids = outside.stream()
                .map(booking -> booking.id().toString())
                .sorted()
                .collect(Collectors.joining(" "));
        return new Asked(links, ids, outside.isEmpty() || ids.equals(confirmed));
    }
}
