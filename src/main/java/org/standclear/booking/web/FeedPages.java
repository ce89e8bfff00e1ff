package org.standclear.booking.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.feed.CalendarFeeds;
import org.standclear.booking.feed.CalendarFeeds.Feed;
import org.standclear.booking.feed.CalendarFeeds.Made;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** A person's calendar addresses, and the calendars behind them. */
@Controller
class FeedPages {

    private static final String PATH = "/me/calendar";
    private static final MediaType CALENDAR = MediaType.parseMediaType("text/calendar;charset=utf-8");

    private final CalendarFeeds feeds;
    private final Cells cells;
    private final PatientPost patientPost;
    private final LabTime labTime;
    private final String site;

    FeedPages(
            CalendarFeeds feeds,
            Cells cells,
            PatientPost patientPost,
            LabTime labTime,
            @Value("${standclear.mail.site:http://localhost:8080}") String site) {
        this.feeds = feeds;
        this.cells = cells;
        this.patientPost = patientPost;
        this.labTime = labTime;
        this.site = site.replaceAll("/+$", "");
    }

    /** An address in the list. */
    record Line(UUID id, String what, String since) {}

    @GetMapping(PATH)
    String list(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(me, null, model);
    }

    /** The address goes onto this one page and nowhere else. */
    @PostMapping(PATH)
    String make(
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(defaultValue = "") String of,
            @AuthenticationPrincipal SignedInPerson me,
            Model model) {
        AtomicReference<@Nullable String> secret = new AtomicReference<>();
        Optional<String> done = patientPost.run(formToken, () -> {
            secret.set(made(of, me).secret());
            return PATH;
        });
        String once = secret.get();
        return once == null ? "redirect:" + done.orElse(PATH) : page(me, site + "/calendar/" + once + ".ics", model);
    }

    private Made made(String of, SignedInPerson me) {
        if (of.isEmpty() || !me.isLabStaff()) {
            return feeds.makeForPerson(me.id());
        }
        if (of.equals("lab")) {
            return feeds.makeForLab(me.id());
        }
        return cells.all().stream()
                .filter(cell -> cell.id().toString().equals(of))
                .findFirst()
                .map(cell -> feeds.makeForCell(cell.id(), me.id()))
                .orElseThrow(() -> new NotFoundException("cell"));
    }

    @PostMapping(PATH + "/{feed}/revoke")
    String revoke(
            @PathVariable UUID feed,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me) {
        if (feeds.of(me.id()).stream().noneMatch(one -> one.id().equals(feed))) {
            throw new NotFoundException("address");
        }
        return "redirect:"
                + patientPost
                        .run(formToken, () -> {
                            feeds.revoke(feed, me.id());
                            return PATH;
                        })
                        .orElse(PATH);
    }

    /** For programs: no account, no session; whoever has the secret reads. */
    @GetMapping("/calendar/{secret}")
    ResponseEntity<String> calendar(@PathVariable String secret) {
        String text = feeds.calendar(secret.endsWith(".ics") ? secret.substring(0, secret.length() - 4) : secret)
                .orElseThrow(() -> new NotFoundException("calendar"));
        return ResponseEntity.ok()
                .contentType(CALENDAR)
                .cacheControl(CacheControl.noCache().cachePrivate())
                .eTag(Sha256.of(text))
                .header("X-Robots-Tag", "noindex")
                .body(text);
    }

    private String page(SignedInPerson me, @Nullable String address, Model model) {
        List<Line> lines = feeds.of(me.id()).stream().map(this::line).toList();
        Map<String, String> choices = new LinkedHashMap<>();
        choices.put("", "My own bookings");
        if (me.isLabStaff()) {
            choices.put("lab", "The whole lab, without names");
            cells.all().forEach(cell -> choices.put(cell.id().toString(), cell.name() + ", without names"));
        }
        model.addAttribute("lines", lines);
        model.addAttribute("address", address);
        model.addAttribute("choices", choices);
        model.addAttribute(
                "headline",
                lines.isEmpty()
                        ? "You have no calendar address"
                        : lines.size() == 1
                                ? "You have one calendar address"
                                : "You have " + lines.size() + " calendar addresses");
        return "booking/calendar";
    }

    private Line line(Feed feed) {
        UUID subject = feed.subject();
        String what = switch (feed.kind()) {
            case PERSON -> "Your own bookings";
            case LAB -> "The whole lab";
            case CELL ->
                subject == null
                        ? "A cell"
                        : cells.find(new CellId(subject)).map(Cell::name).orElse("A cell");
        };
        return new Line(feed.id(), what, "since " + labTime.full(feed.madeAt()));
    }
}
