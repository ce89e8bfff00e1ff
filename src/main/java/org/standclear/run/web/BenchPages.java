package org.standclear.run.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.SignedInPerson;

/** The screens at the cells. */
@Controller
class BenchPages {

    private final Cells cells;
    private final BenchScreens screens;
    private final OwnBench ownBench;

    BenchPages(Cells cells, BenchScreens screens, OwnBench ownBench) {
        this.cells = cells;
        this.screens = screens;
        this.ownBench = ownBench;
    }

    /** A cell to choose. */
    record Choice(String id, String name, String state, String words, String reason) {

        static Choice of(Cell cell) {
            return new Choice(
                    cell.id().toString(),
                    cell.name(),
                    StateMarks.of(cell.state()),
                    cell.state().words(),
                    cell.stateReason());
        }
    }

    @GetMapping("/bench")
    String choose(@AuthenticationPrincipal SignedInPerson me, Model model) {
        Optional<CellId> own = ownBench.of(me);
        if (own.isPresent()) {
            return "redirect:" + BenchListActs.address(own.get());
        }
        List<Choice> choices = cells.all().stream().map(Choice::of).toList();
        model.addAttribute("cells", choices);
        return "bench/choose";
    }

    @GetMapping("/bench/{cell}")
    String bench(@PathVariable CellId cell, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(cell, me, Map.of(), Map.of(), model);
    }

    /** The same screen for a page that has it already: nothing when nothing changed. */
    @GetMapping("/bench/{cell}/pulse")
    Object pulse(
            @PathVariable CellId cell,
            @RequestParam @Nullable String stamp,
            @AuthenticationPrincipal SignedInPerson me,
            Model model) {
        BenchView view = screens.of(cell, me);
        if (view.stamp().equals(stamp)) {
            return ResponseEntity.status(HttpStatus.NO_CONTENT).build();
        }
        fill(view, Map.of(), Map.of(), model);
        return new ModelAndView("bench/screen", model.asMap());
    }

    /** The screen with what was refused on top. */
    String page(CellId cell, SignedInPerson me, Map<String, String> errors, Map<String, String> typed, Model model) {
        fill(screens.of(cell, me), errors, typed, model);
        return "bench/screen";
    }

    private static void fill(BenchView view, Map<String, String> errors, Map<String, String> typed, Model model) {
        model.addAttribute("view", view);
        model.addAttribute("errors", errors);
        model.addAttribute("typed", typed);
    }
}
