package org.standclear.cell.web;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.standclear.cell.Cell;
import org.standclear.cell.CellFacts;
import org.standclear.cell.CellFeatures;
import org.standclear.cell.CellFeatures.Feature;
import org.standclear.cell.CellRegister;
import org.standclear.cell.CellStates;
import org.standclear.cell.CellTag;
import org.standclear.cell.CellVersion;
import org.standclear.cell.Cells;
import org.standclear.cell.DayTests;
import org.standclear.cell.VersionEffects;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** The list of cells, one cell, and its versions. */
@Controller
class CellPages {

    private static final int TESTS_SHOWN = 10;

    private final Cells cells;
    private final CellRegister register;
    private final CellStates states;
    private final DayTests dayTests;
    private final VersionEffects effects;
    private final CellFeatures features;
    private final DutyLines duties;
    private final Clock clock;

    CellPages(
            Cells cells,
            CellRegister register,
            CellStates states,
            DayTests dayTests,
            VersionEffects effects,
            CellFeatures features,
            DutyLines duties,
            Clock clock) {
        this.cells = cells;
        this.register = register;
        this.states = states;
        this.dayTests = dayTests;
        this.effects = effects;
        this.features = features;
        this.duties = duties;
        this.clock = clock;
    }

    @GetMapping("/cells")
    String list(@AuthenticationPrincipal SignedInPerson me, Model model) {
        model.addAttribute("cells", cells.all().stream().map(this::row).toList());
        model.addAttribute("waiting", seesProposals(me) ? register.waiting() : List.of());
        model.addAttribute("staff", me.isLabStaff());
        return "cell/list";
    }

    private CellRow row(Cell cell) {
        return new CellRow(cell, register.facts(cells.current(cell.id())), cells.obstacles(cell.id(), clock.instant()));
    }

    @GetMapping("/cells/{cell}")
    String show(@PathVariable CellId cell, @AuthenticationPrincipal SignedInPerson me, Model model) {
        Cell found = found(cell);
        CellVersion inForce = cells.current(cell);
        List<CellTag> tags = states.tags(cell);
        model.addAttribute("cell", found);
        model.addAttribute("state", mark(found));
        model.addAttribute("version", inForce);
        model.addAttribute("slotsBegin", slotsBegin(found.startOffsetMinutes()));
        model.addAttribute("facts", register.facts(inForce));
        model.addAttribute(
                "features",
                String.join(", ", features.of(cell).stream().map(Feature::words).toList()));
        model.addAttribute("obstacles", cells.obstacles(cell, clock.instant()));
        model.addAttribute("versions", versionRows(cells.versions(cell)));
        model.addAttribute("tags", tags);
        model.addAttribute("duties", duties.all(cell));
        model.addAttribute("tests", dayTests.recent(cell, TESTS_SHOWN));
        model.addAttribute("proposals", seesProposals(me) ? register.proposals(cell) : List.of());
        model.addAttribute("effects", seesProposals(me) ? effects.of(cell) : List.of());
        model.addAttribute("sees", seesProposals(me));
        model.addAttribute("staff", me.isLabStaff());
        model.addAttribute("reads", me.isLabStaff() || me.is(Role.STUDENT));
        model.addAttribute("instructor", me.is(Role.INSTRUCTOR));
        return "cell/show";
    }

    private static String slotsBegin(int offset) {
        return offset == 0
                ? "Slots begin on the hour and half hour."
                : String.format(Locale.ROOT, "Slots begin at :%02d and :%02d.", offset, offset + 30);
    }

    private List<VersionRow> versionRows(List<CellVersion> latestFirst) {
        List<VersionRow> rows = new ArrayList<>();
        for (int i = 0; i < latestFirst.size(); i++) {
            CellVersion version = latestFirst.get(i);
            boolean first = i + 1 == latestFirst.size();
            rows.add(new VersionRow(
                    version,
                    first,
                    first ? List.of() : register.facts(version).since(register.facts(latestFirst.get(i + 1)))));
        }
        return rows;
    }

    @GetMapping("/cells/{cell}/versions/{number}")
    String version(@PathVariable CellId cell, @PathVariable int number, Model model) {
        Cell found = found(cell);
        CellVersion version = version(cell, number);
        model.addAttribute("cell", found);
        model.addAttribute("version", version);
        model.addAttribute("facts", register.facts(version));
        model.addAttribute("inForce", number == found.currentVersion());
        return "cell/version";
    }

    @GetMapping("/cells/{cell}/versions/{number}/file")
    ResponseEntity<byte[]> file(@PathVariable CellId cell, @PathVariable int number) {
        Cell found = found(cell);
        String name = found.name().replaceAll("[^A-Za-z0-9]+", "-") + "-v" + number + ".yaml";
        return ResponseEntity.ok()
                .contentType(new MediaType(MediaType.TEXT_PLAIN, StandardCharsets.UTF_8))
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment().filename(name).build().toString())
                .body(version(cell, number).file().getBytes(StandardCharsets.UTF_8));
    }

    /** The state as the shape beside its words knows it. */
    private static String mark(Cell cell) {
        return cell.state().name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static boolean seesProposals(SignedInPerson me) {
        return me.isLabStaff() || me.is(Role.REVIEWER);
    }

    private CellVersion version(CellId cell, int number) {
        return cells.version(cell, number).orElseThrow(() -> new NotFoundException("version"));
    }

    private Cell found(CellId id) {
        return cells.find(id).orElseThrow(() -> new NotFoundException("cell"));
    }

    /** A cell in the list. */
    record CellRow(Cell cell, CellFacts facts, List<Cells.Obstacle> obstacles) {

        public String state() {
            return mark(cell);
        }
    }

    /** A version and what it changed. */
    record VersionRow(CellVersion version, boolean first, List<CellFacts.Change> changes) {}
}
