package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.Bookings;
import org.standclear.booking.BulkMoves;
import org.standclear.booking.BulkMoves.BulkMove;
import org.standclear.booking.BulkMoves.Done;
import org.standclear.booking.BulkMoves.Planned;
import org.standclear.booking.BulkMoves.Which;
import org.standclear.booking.SlotCalendar;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** A cell is down: where everybody would go, the act that moves them, and its undoing. */
@Controller
class MoveAllPages {

    private static final int LONGEST_REASON = 200;
    private static final String UNFIT = "unfit";

    private static final Map<String, String> WHOM = whom();

    private final BulkMoves bulkMoves;
    private final Bookings bookings;
    private final OwnBookings own;
    private final SlotCalendar calendar;
    private final Cells cells;
    private final PatientPost patientPost;
    private final LabTime labTime;

    MoveAllPages(
            BulkMoves bulkMoves,
            Bookings bookings,
            OwnBookings own,
            SlotCalendar calendar,
            Cells cells,
            PatientPost patientPost,
            LabTime labTime) {
        this.bulkMoves = bulkMoves;
        this.bookings = bookings;
        this.own = own;
        this.calendar = calendar;
        this.cells = cells;
        this.patientPost = patientPost;
        this.labTime = labTime;
    }

    /**
     * The form as it was sent.
     *
     * @param until the last day whose bookings move
     * @param whom {@code unfit} for those only that need what the cell has not
     */
    record MoveAllForm(
            @Nullable String formToken,
            @Nullable String until,
            @Nullable String whom,
            @Nullable String seen,
            @Nullable String reason) {}

    /**
     * One booking of a plan or of a move.
     *
     * @param elsewhere whether it went elsewhere than planned
     */
    record Line(String who, String from, String to, String toHref, String due, boolean elsewhere) {}

    @GetMapping("/cells/{cell}/move-all")
    String plan(
            @PathVariable CellId cell,
            @RequestParam(required = false) @Nullable String until,
            @RequestParam(required = false) @Nullable String whom,
            Model model) {
        Cell found = found(cell);
        String reason = UNFIT.equals(whom) ? "" : found.stateReason();
        return page(found, new MoveAllForm(null, day(until).toString(), whom, null, reason), Map.of(), model);
    }

    @PostMapping("/cells/{cell}/move-all")
    String moveAll(
            @PathVariable CellId cell,
            @ModelAttribute MoveAllForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Cell found = found(cell);
        Map<String, String> errors = new LinkedHashMap<>();
        if (PlainText.check(form.reason(), LONGEST_REASON) instanceof PlainText.Refused refused) {
            errors.put("reason", refused.says());
        } else {
            String reason = ((PlainText.Fine) PlainText.check(form.reason(), LONGEST_REASON)).text();
            Optional<String> done = patientPost.run(form.formToken(), () -> {
                Done outcome = bulkMoves.moveAll(which(found, form), String.valueOf(form.seen()), me.id(), reason);
                if (outcome instanceof Done.All all) {
                    return "/book/moves/" + all.id();
                }
                errors.put("", ((Done.Refused) outcome).says());
                return null;
            });
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(found, form, errors, model);
    }

    @GetMapping("/book/moves/{move}")
    String show(@PathVariable UUID move, Model model) {
        return moved(move, Map.of(), model);
    }

    @PostMapping("/book/moves/{move}/undo")
    String undo(
            @PathVariable UUID move,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        if (bulkMoves.find(move).isEmpty()) {
            throw new NotFoundException("move");
        }
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<String> done = patientPost.run(formToken, () -> {
            Optional<String> refusal = bulkMoves.undo(move, me.id());
            refusal.ifPresent(says -> errors.put("", "Not undone, everything stays as it is. " + says));
            return refusal.isPresent() ? null : "/book/moves/" + move;
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return moved(move, errors, model);
    }

    private Which which(Cell cell, MoveAllForm form) {
        return new Which(cell.id(), endOf(day(form.until())), UNFIT.equals(form.whom()));
    }

    private String page(Cell cell, MoveAllForm form, Map<String, String> errors, Model model) {
        List<Planned> plan = bulkMoves.plan(which(cell, form));
        long stuck = plan.stream().filter(one -> one.to() == null).count();
        model.addAttribute("cell", cell);
        model.addAttribute("seen", BulkMoves.written(plan));
        model.addAttribute("lines", plan.stream().map(this::line).toList());
        model.addAttribute(
                "headline",
                plan.isEmpty()
                        ? (UNFIT.equals(form.whom())
                                        ? "No booking needs what " + cell.name() + " has not, until "
                                        : "Nobody has booked " + cell.name() + " until ")
                                + labTime.day(day(form.until()))
                        : plan.size()
                                + (plan.size() == 1 ? " booking moves off " : " bookings move off ")
                                + cell.name()
                                + (stuck == 0 ? "" : ", " + stuck + " without another slot"));
        model.addAttribute("form", form);
        model.addAttribute("whom", WHOM);
        model.addAttribute("errors", errors);
        return "booking/move-all";
    }

    private Line line(Planned one) {
        var to = one.to();
        var due = one.due();
        return new Line(
                own.name(one.booking().operator()),
                labTime.day(one.booking().start()) + " "
                        + labTime.time(one.booking().start()),
                to == null
                        ? "no slot free: a make-up, and first on the waiting list"
                        : found(to.cell()).name() + ", " + labTime.day(to.start()) + " " + labTime.time(to.start())
                                + without(one)
                                + (due != null
                                                && to.start().isAfter(due)
                                                && one.booking().start().isBefore(due)
                                        ? ", after the due date"
                                        : ""),
                "",
                due == null ? "" : labTime.day(due),
                false);
    }

    private String without(Planned one) {
        return one.attended() || one.booking().attendant() == null
                ? ""
                : ", without " + own.name(one.booking().attendant()) + ": needs an attendant there";
    }

    private String moved(UUID id, Map<String, String> errors, Model model) {
        BulkMove move = bulkMoves.find(id).orElseThrow(() -> new NotFoundException("move"));
        List<Line> lines = move.moved().stream()
                .map(one -> new Line(
                        own.name(bookings.find(one.was()).orElseThrow().operator()),
                        own.title(bookings.find(one.was()).orElseThrow()),
                        title(one.now()) + (one.stays() ? "; has got another slot since, and keeps that" : ""),
                        "/bookings/" + (one.now() == null ? one.was() : one.now()),
                        "",
                        one.elsewhere()))
                .toList();
        boolean undone = move.undoneAt() != null;
        model.addAttribute("move", move);
        model.addAttribute("lines", lines);
        model.addAttribute(
                "headline",
                (undone ? "Undone: " : "Moved: ")
                        + lines.size()
                        + (lines.size() == 1 ? " booking off " : " bookings off ")
                        + found(move.cell()).name());
        model.addAttribute("by", own.name(move.by()) + ", " + labTime.full(move.at()));
        model.addAttribute("undone", undone);
        model.addAttribute("errors", errors);
        return "booking/moved";
    }

    private String title(@Nullable BookingId now) {
        return now == null
                ? "a make-up, and first on the waiting list"
                : own.title(bookings.find(now).orElseThrow());
    }

    private static Map<String, String> whom() {
        Map<String, String> choices = new LinkedHashMap<>();
        choices.put("", "Everybody");
        choices.put(UNFIT, "Only who needs a tool or a feature that it has not");
        return choices;
    }

    private Cell found(CellId cell) {
        return cells.find(cell).orElseThrow(() -> new NotFoundException("cell"));
    }

    /** The day asked for, or the last that can be booked. */
    private LocalDate day(@Nullable String text) {
        try {
            return text == null ? calendar.lastDay() : LocalDate.parse(text);
        } catch (java.time.DateTimeException noSuchDay) {
            return calendar.lastDay();
        }
    }

    private java.time.Instant endOf(LocalDate day) {
        return day.plusDays(1).atStartOfDay(labTime.zone()).toInstant();
    }
}
