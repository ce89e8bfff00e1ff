package org.standclear.cell.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.cell.Cell;
import org.standclear.cell.CellFeatures;
import org.standclear.cell.Cells;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** What a cell offers beyond the usual; lab staff keep it. */
@Controller
class FeaturePages {

    private static final String PATH = "/cells/{cell}/features";

    private final Cells cells;
    private final CellFeatures features;
    private final PostOnce postOnce;

    FeaturePages(Cells cells, CellFeatures features, PostOnce postOnce) {
        this.cells = cells;
        this.features = features;
        this.postOnce = postOnce;
    }

    @GetMapping(PATH)
    String show(@PathVariable CellId cell, Model model) {
        return page(found(cell), "", Map.of(), model);
    }

    @PostMapping(PATH)
    String add(
            @PathVariable CellId cell,
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(defaultValue = "") String words,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Cell found = found(cell);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<String> done = postOnce.run(formToken, () -> {
            Optional<String> wrong = features.add(cell, words, me.id());
            wrong.ifPresent(says -> errors.put("words", says));
            return wrong.isPresent() ? null : path(cell);
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(found, words, errors, model);
    }

    @PostMapping(PATH + "/{feature}/remove")
    String remove(
            @PathVariable CellId cell,
            @PathVariable UUID feature,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me) {
        found(cell);
        if (features.of(cell).stream().noneMatch(one -> one.id().equals(feature))) {
            throw new NotFoundException("feature");
        }
        return "redirect:"
                + postOnce.run(formToken, () -> {
                            features.remove(feature, me.id());
                            return path(cell);
                        })
                        .orElse(path(cell));
    }

    private static String path(CellId cell) {
        return "/cells/" + cell + "/features";
    }

    private Cell found(CellId cell) {
        return cells.find(cell).orElseThrow(() -> new NotFoundException("cell"));
    }

    private String page(Cell cell, String words, Map<String, String> errors, Model model) {
        model.addAttribute("cell", cell);
        model.addAttribute("features", features.of(cell.id()));
        model.addAttribute("words", words);
        model.addAttribute("errors", errors);
        return "cell/features";
    }
}
