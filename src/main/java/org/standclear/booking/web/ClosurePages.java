package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.ArrayList;
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
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.BookingDesk.Closing;
import org.standclear.booking.CellClosure;
import org.standclear.booking.CloseCell;
import org.standclear.cell.Cells;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** Staff keep a cell for a class, a demonstration, a repair or an exam, and give it back. */
@Controller
class ClosurePages {

    private final BookingDesk desk;
    private final OwnBookings own;
    private final Cells cells;
    private final PatientPost patientPost;
    private final LabTime labTime;

    ClosurePages(BookingDesk desk, OwnBookings own, Cells cells, PatientPost patientPost, LabTime labTime) {
        this.desk = desk;
        this.own = own;
        this.cells = cells;
        this.patientPost = patientPost;
        this.labTime = labTime;
    }

    @GetMapping("/closures/new")
    String form(@ModelAttribute ClosureForm form, Model model) {
        return page(form, Map.of(), List.of(), model);
    }

    @PostMapping("/closures/new")
    String close(
            @ModelAttribute ClosureForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        List<Booking> standing = new ArrayList<>();
        Optional<CloseCell> order = form.read(errors, labTime.zone(), me.id());
        if (order.isPresent()) {
            if (cells.find(order.get().cell()).isEmpty()) {
                throw new NotFoundException("cell");
            }
            Optional<String> done = patientPost.run(form.formToken(), () -> {
                Closing closing = desk.close(order.get());
                if (closing instanceof Closing.Refused refused) {
                    errors.put(refused.field(), refused.says());
                    standing.addAll(refused.standing());
                    return null;
                }
                return "/book?day=" + labTime.date(order.get().start());
            });
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(form, errors, standing, model);
    }

    @GetMapping("/closures/{closure}")
    String show(@PathVariable UUID closure, Model model) {
        CellClosure found = desk.closure(closure).orElseThrow(() -> new NotFoundException("closure"));
        model.addAttribute("closure", found);
        model.addAttribute("cellName", cells.find(found.cell()).orElseThrow().name());
        model.addAttribute("by", own.name(found.madeBy()));
        return "booking/closure";
    }

    @PostMapping("/closures/{closure}/remove")
    String remove(
            @PathVariable UUID closure,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me) {
        return "redirect:"
                + patientPost
                        .run(formToken, () -> {
                            CellClosure found =
                                    desk.closure(closure).orElseThrow(() -> new NotFoundException("closure"));
                            desk.reopen(closure, me.id());
                            return "/book?day=" + labTime.date(found.start());
                        })
                        .orElse("/book");
    }

    private String page(ClosureForm form, Map<String, String> errors, List<Booking> standing, Model model) {
        Map<String, String> cellNames = new LinkedHashMap<>();
        cells.all().forEach(cell -> cellNames.put(cell.id().toString(), cell.name()));
        Map<String, String> kinds = new LinkedHashMap<>();
        for (CellClosure.Kind kind : CellClosure.Kind.values()) {
            kinds.put(kind.name(), kind.words());
        }
        Map<String, String> links = new LinkedHashMap<>();
        standing.forEach(booking ->
                links.put("/bookings/" + booking.id(), own.title(booking) + ": " + own.name(booking.operator())));
        model.addAttribute("form", form);
        model.addAttribute("cells", cellNames);
        model.addAttribute("kinds", kinds);
        model.addAttribute("errors", errors);
        model.addAttribute("standing", links);
        return "booking/keep";
    }
}
