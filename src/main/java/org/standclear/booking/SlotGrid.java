package org.standclear.booking;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.standclear.platform.ids.CellId;

/**
 * The slots of a day. Slots are laid out in real minutes from the first start after opening, so that on a day on which
 * the clocks change none falls into the hour that does not exist and the hour that comes twice holds twice as many.
 *
 * @param zone the lab's
 * @param length of every slot
 */
record SlotGrid(ZoneId zone, Duration length) {

    SlotGrid {
        if (length.toMinutes() < 1 || !length.equals(Duration.ofMinutes(length.toMinutes()))) {
            throw new IllegalArgumentException("slots last whole minutes: " + length);
        }
    }

    /** The slots that fit into the opening periods, in order; starts are that many minutes after the grid's. */
    List<Slot> slots(CellId cell, LocalDate day, List<OpenPeriod> periods, int offsetMinutes) {
        return slots(cell, day, periods, offsetMinutes, length);
    }

    /** The same starts for somebody whose slots are longer; one may then reach into the next start. */
    List<Slot> slots(CellId cell, LocalDate day, List<OpenPeriod> periods, int offsetMinutes, Duration taking) {
        List<Slot> slots = new ArrayList<>();
        for (OpenPeriod period : periods) {
            // an hour that comes twice: the lab opens at the first and closes at the second
            Instant opens = day.atTime(period.opens()).atZone(zone).toInstant();
            Instant closes = day.atTime(period.closes())
                    .atZone(zone)
                    .withLaterOffsetAtOverlap()
                    .toInstant();
            Instant start = firstStart(opens, offsetMinutes);
            while (!start.plus(taking).isAfter(closes)) {
                slots.add(new Slot(cell, start, start.plus(taking)));
                start = start.plus(length);
            }
        }
        return slots;
    }

    /** The first instant from opening on at which the lab's clock stands on the cell's grid. */
    private Instant firstStart(Instant opens, int offsetMinutes) {
        LocalDateTime local = LocalDateTime.ofInstant(opens, zone);
        long sinceMidnight =
                ChronoUnit.MINUTES.between(local.truncatedTo(ChronoUnit.DAYS), local.truncatedTo(ChronoUnit.MINUTES));
        boolean partOfMinute = local.getSecond() != 0 || local.getNano() != 0;
        long from = sinceMidnight + (partOfMinute ? 1 : 0);
        long wait = Math.floorMod(offsetMinutes - from, length.toMinutes());
        return opens.truncatedTo(ChronoUnit.MINUTES).plus(Duration.ofMinutes(wait + (partOfMinute ? 1 : 0)));
    }
}
