package org.standclear.cell.web;

import jakarta.servlet.http.HttpServletResponse;
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
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.cell.Cell;
import org.standclear.cell.CellFeatures;
import org.standclear.cell.Cells;
import org.standclear.cell.FeatureNeeds;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** What a cell offers beyond the usual; lab staff keep it. */
@Controller
class FeaturePages {

    private static final String PATH = "/cells/{cell}/features";

    private final Cells cells;
    private final CellFeatures features;
    private final FeatureNeeds needs;
    private final PostOnce postOnce;
    private final LabTime labTime;

    FeaturePages(Cells cells, CellFeatures features, FeatureNeeds needs, PostOnce postOnce, LabTime labTime) {
        this.cells = cells;
        this.features = features;
        this.needs = needs;
        this.postOnce = postOnce;
        this.labTime = labTime;
    }

    /** A booking that needs something. */
    record Line(String href, String what, String needs) {}

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

    @GetMapping(PATH + "/{feature}/remove")
    String asked(@PathVariable CellId cell, @PathVariable UUID feature, Model model) {
        Cell found = found(cell);
        CellFeatures.Feature one = features.of(cell).stream()
                .filter(has -> has.id().equals(feature))
                .findFirst()
                .orElseThrow(() -> new NotFoundException("feature"));
        List<Line> lines = lines(needs.needing(cell, one.words()));
        model.addAttribute("cell", found);
        model.addAttribute("feature", one);
        model.addAttribute("lines", lines);
        model.addAttribute(
                "headline",
                switch (lines.size()) {
                    case 0 -> "No booking on " + found.name() + " needs \u201c" + one.words() + "\u201d";
                    case 1 -> "1 booking on " + found.name() + " needs \u201c" + one.words() + "\u201d";
                    default -> lines.size() + " bookings on " + found.name() + " need \u201c" + one.words() + "\u201d";
                });
        return "cell/feature-remove";
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
        model.addAttribute("unmet", lines(needs.unmet(cell.id())));
        model.addAttribute("errors", errors);
        return "cell/features";
    }

    private List<Line> lines(List<FeatureNeeds.Needing> needing) {
        return needing.stream()
                .map(one -> new Line(
                        one.bookingHref(),
                        one.operator() + ", " + labTime.day(one.start()) + " " + labTime.time(one.start()),
                        one.needs()))
                .toList();
    }
}
