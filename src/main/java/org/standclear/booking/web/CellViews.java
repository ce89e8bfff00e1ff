package org.standclear.booking.web;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.CellClosure;
import org.standclear.booking.CellStrips;
import org.standclear.booking.Slot;
import org.standclear.booking.SlotCalendar.CellDay;
import org.standclear.booking.SlotCalendar.DayPlan;
import org.standclear.booking.SlotCalendar.Held;
import org.standclear.booking.web.DayView.CellView;
import org.standclear.booking.web.DayView.SlotMark;
import org.standclear.cell.Cell;
import org.standclear.people.Authorisation;
import org.standclear.people.Duty;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** Puts one cell of the Book page together: what is free there, and why the rest is not. */
@Component
class CellViews {

    private final LabTime labTime;

    CellViews(LabTime labTime) {
        this.labTime = labTime;
    }

    /**
     * Who looks, at what.
     *
     * @param obstacles why the reader cannot work at a cell, by cell; to the reader only
     * @param sharedOut why nobody but staff takes a slot of the day; empty when everybody may
     */
    record Reader(
            SignedInPerson me,
            List<Authorisation> authorisations,
            Map<CellId, String> obstacles,
            Map<CellId, String> tools,
            CellStrips strips,
            DayPlan plan,
            String sharedOut,
            Instant now) {

        boolean mayOperate(Slot slot) {
            return sharedOut.isEmpty()
                    && !obstacles.containsKey(slot.cell())
                    && authorisations.stream()
                            .anyMatch(one -> one.duty() == Duty.OPERATOR && one.covers(slot.cell(), slot.start()));
        }
    }

    /** A mark with the instant by which it is ordered. */
    private record Placed(Instant start, SlotMark mark) {}

    CellView of(CellDay day, Reader reader) {
        Cell cell = day.cell();
        boolean authorised = day.free().isEmpty()
                || !reader.sharedOut().isEmpty()
                || reader.obstacles().containsKey(cell.id())
                || day.free().stream().anyMatch(reader::mayOperate);
        return new CellView(
                cell.id().toString(),
                cell.name(),
                cell.state().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'),
                cell.state().words(),
                reader.tools().getOrDefault(cell.id(), "none"),
                whyNot(cell, authorised, reader),
                reader.strips().strip(reader.plan(), day, reader.now()),
                marks(day, reader));
    }

    private @Nullable String whyNot(Cell cell, boolean authorised, Reader reader) {
        if (!cell.state().mayRun()) {
            return "Not bookable while it is " + cell.state().words() + ": " + cell.stateReason();
        }
        if (!authorised) {
            return "You are not authorised as operator here on "
                    + labTime.day(reader.plan().date()) + ". Lab staff enter the authorisation after the induction.";
        }
        return reader.obstacles().get(cell.id());
    }

    private List<SlotMark> marks(CellDay day, Reader reader) {
        List<Placed> placed = new ArrayList<>();
        if (day.cell().state().mayRun()) {
            day.free().stream()
                    .filter(slot -> !slot.start().isBefore(reader.now()))
                    .forEach(slot -> placed.add(new Placed(slot.start(), free(slot, reader))));
        }
        day.bookings().stream()
                .filter(booking ->
                        booking.state().holdsItsSlot() && booking.end().isAfter(reader.now()))
                .forEach(booking -> placed.addAll(booked(booking, reader)));
        day.held().stream()
                .filter(one -> one.slot().end().isAfter(reader.now()))
                .forEach(one -> placed.addAll(held(one, reader)));
        day.closures().stream()
                .filter(closure -> closure.end().isAfter(reader.now()))
                .forEach(closure -> placed.add(new Placed(closure.start(), kept(closure))));
        return placed.stream()
                .sorted(Comparator.comparing(Placed::start))
                .map(Placed::mark)
                .toList();
    }

    private SlotMark free(Slot slot, Reader reader) {
        boolean may = reader.mayOperate(slot);
        return new SlotMark(
                labTime.time(slot.start()),
                may ? "free" : "taken",
                may ? "free" : "not yours to book",
                may ? "/book/slot?cell=" + slot.cell() + "&start=" + slot.start() : null);
    }

    private List<Placed> booked(Booking booking, Reader reader) {
        if (booking.involves(reader.me().id()) || reader.me().isLabStaff()) {
            return List.of(new Placed(booking.start(), mark(booking, reader)));
        }
        return reader.strips().asOthersSee(booking).stream()
                .map(one -> new Placed(one.start(), new SlotMark(labTime.time(one.start()), "taken", "taken", null)))
                .toList();
    }

    /** Neither free nor booked; in usual stretches, since a longer one would say that somebody needs longer. */
    private List<Placed> held(Held one, Reader reader) {
        String until = "offered until " + labTime.time(one.until());
        if (one.ownOffer() != null) {
            SlotMark own = new SlotMark(
                    labTime.time(one.slot().start()),
                    "mine",
                    "offered to you until " + labTime.time(one.until()),
                    "/book/offers/" + one.ownOffer());
            return List.of(new Placed(one.slot().start(), own));
        }
        return reader.strips().asOthersSee(one.slot()).stream()
                .map(slot -> new Placed(slot.start(), new SlotMark(labTime.time(slot.start()), "offered", until, null)))
                .toList();
    }

    private SlotMark mark(Booking booking, Reader reader) {
        boolean mine = booking.involves(reader.me().id());
        String words = mine ? "yours" : "taken";
        boolean opens = mine || reader.me().isLabStaff();
        return new SlotMark(
                labTime.time(booking.start()),
                mine ? "mine" : "taken",
                words,
                opens ? "/bookings/" + booking.id() : null);
    }

    private SlotMark kept(CellClosure closure) {
        return new SlotMark(
                labTime.times(closure.start(), closure.end()),
                "closed",
                closure.kind().words(),
                null);
    }
}
