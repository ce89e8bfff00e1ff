package org.standclear.booking.web;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.booking.Slot;
import org.standclear.booking.SlotCalendar;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** Puts the booking form together. */
@Component
class SlotViews {

    /** Refusals that another choice on the form can mend, by field. */
    private static final Map<String, String> FIELDS = Map.of(
            "attendant", "attendant",
            "attendant-busy", "attendant",
            "assignment", "purpose",
            "assignment-fit", "purpose",
            "course", "purpose",
            "quota-assignment", "purpose");

    private static final Set<String> WORTH_TRYING_AGAIN = Set.of("busy");

    private final Cells cells;
    private final SlotChoices choices;
    private final SlotCalendar calendar;
    private final LabTime labTime;
    private final Clock clock;

    SlotViews(Cells cells, SlotChoices choices, SlotCalendar calendar, LabTime labTime, Clock clock) {
        this.cells = cells;
        this.choices = choices;
        this.calendar = calendar;
        this.labTime = labTime;
        this.clock = clock;
    }

    SlotView of(SlotForm form, CellId id, Instant start, SignedInPerson me, Outcome.@Nullable Refused refusal) {
        Cell cell = found(id);
        String field = refusal == null ? null : FIELDS.get(refusal.rule());
        boolean open = refusal == null || field != null || WORTH_TRYING_AGAIN.contains(refusal.rule());
        Map<String, String> attendants =
                open ? choices.attendants(cell, me.id(), start, start.plus(calendar.lengthFor(me.id()))) : Map.of();
        return new SlotView(
                cell.name(),
                when(start, me),
                form.attendant() == null && open ? withUsualAttendant(form, cell, me, attendants, start) : form,
                attendants,
                open ? choices.purposes(me.id(), cell, start) : Map.of(),
                refusal == null ? null : refusal.says(),
                refusal == null || !open ? Map.of() : Map.of(field == null ? "" : field, refusal.says()),
                open,
                refusal == null ? List.of() : links(refusal.nextFree()),
                "/book?day=" + labTime.date(start));
    }

    /** The form named no instant at all. */
    SlotView unreadable(SlotForm form, CellId id) {
        return new SlotView(
                found(id).name(),
                "no such time",
                form,
                Map.of(),
                Map.of(),
                "\"" + form.start() + "\" is not a date and time of a slot. Choose a slot on the Book page.",
                Map.of(),
                false,
                List.of(),
                "/book");
    }

    private SlotForm withUsualAttendant(
            SlotForm form, Cell cell, SignedInPerson me, Map<String, String> attendants, Instant start) {
        String usual = choices.usualAttendant(me.id(), attendants, clock.instant());
        String purpose = form.purpose() == null
                ? choices.purposes(me.id(), cell, start).keySet().iterator().next()
                : form.purpose();
        return new SlotForm(form.formToken(), form.cell(), form.start(), usual, purpose);
    }

    private List<SlotView.SlotLink> links(List<Slot> slots) {
        Map<CellId, String> names = cells.all().stream().collect(Collectors.toMap(Cell::id, Cell::name));
        Function<Slot, SlotView.SlotLink> link = slot -> new SlotView.SlotLink(
                labTime.day(slot.start()) + " " + labTime.time(slot.start()) + ", "
                        + names.getOrDefault(slot.cell(), "a cell"),
                "/book/slot?cell=" + slot.cell() + "&start=" + slot.start());
        return slots.stream().map(link).toList();
    }

    private String when(Instant start, SignedInPerson me) {
        return labTime.day(start) + ", " + labTime.times(start, start.plus(calendar.lengthFor(me.id())));
    }

    private Cell found(CellId id) {
        return cells.find(id).orElseThrow(() -> new NotFoundException("cell"));
    }
}
