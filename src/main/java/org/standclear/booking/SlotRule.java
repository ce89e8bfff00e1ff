package org.standclear.booking;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.standclear.booking.BookingRequest.Refusal;
import org.standclear.booking.OpeningHours.DayHours;
import org.standclear.cell.Cell;
import org.standclear.platform.time.LabTime;

/** Whether there is such a slot at all, and whether it can be booked now. */
@Component
class SlotRule {

    private final OpeningHours openingHours;
    private final LabTime labTime;

    SlotRule(OpeningHours openingHours, LabTime labTime) {
        this.openingHours = openingHours;
        this.labTime = labTime;
    }

    /** A cell that does not run is not booked, however far ahead: nobody can say when it will. */
    static Optional<Refusal> inService(Cell cell) {
        if (cell.state().mayRun()) {
            return Optional.empty();
        }
        return Refusal.of(
                "cell-not-in-service",
                cell.name() + " is " + cell.state().words() + ": " + cell.stateReason()
                        + ". It can be booked again when lab staff have returned it to service.");
    }

    /** No slot in the past, beyond the horizon, outside opening hours or off the cell's grid. */
    Optional<Refusal> refusal(Cell cell, Instant start, Duration taking, BookingSettings settings, Instant now) {
        if (start.isBefore(now)) {
            return Refusal.of("past", "That slot began at " + labTime.full(start) + " and can no longer be booked.");
        }
        LocalDate day = labTime.date(start);
        LocalDate last = labTime.date(now).plusDays(settings.horizonDays());
        if (day.isAfter(last)) {
            return Refusal.of(
                    "horizon",
                    "Slots can be booked " + settings.horizonDays() + " days ahead, now until " + labTime.day(last)
                            + "; a slot on " + labTime.day(day) + " can be booked from "
                            + labTime.day(day.minusDays(settings.horizonDays())) + " on.");
        }
        DayHours hours = openingHours.on(day);
        if (hours.closed()) {
            return Refusal.of("closed", "The lab is closed on " + labTime.day(day) + note(hours) + ".");
        }
        List<Slot> slots = new SlotGrid(labTime.zone(), settings.slotLength())
                .slots(cell.id(), day, hours.periods(), cell.startOffsetMinutes(), taking);
        if (slots.stream().anyMatch(slot -> slot.start().equals(start))) {
            return Optional.empty();
        }
        return Refusal.of(
                "no-such-slot",
                cell.name() + " has no slot of " + taking.toMinutes() + " min that starts " + labTime.full(start)
                        + ". On " + labTime.day(day) + " the lab is open " + open(hours) + first(slots) + ".");
    }

    private static String note(DayHours hours) {
        return hours.note().isEmpty() ? "" : " (" + hours.note() + ")";
    }

    private static String open(DayHours hours) {
        return hours.periods().stream()
                .map(period -> period.opens() + "-" + period.closes())
                .collect(Collectors.joining(" and "));
    }

    private String first(List<Slot> slots) {
        return slots.isEmpty()
                ? ""
                : " and the first slots start "
                        + slots.stream()
                                .limit(2)
                                .map(slot -> labTime.time(slot.start()))
                                .collect(Collectors.joining(" and "));
    }
}
