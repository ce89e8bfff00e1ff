package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.fairness.LabUse;
import org.standclear.booking.fairness.PersonUse;
import org.standclear.booking.fairness.UseReport;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.TableCell;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.TableFile;

/** Who got how many slots in a stretch of days, on a page and as CSV. */
@Controller
class FairnessPages {

    private static final int LONGEST = 124;
    /** A page of more people than that is read by nobody, the file by a program. */
    private static final int SHOWN = 1000;

    private final UseReport report;
    private final LabTime labTime;
    private final AccessLog looks;

    FairnessPages(UseReport report, LabTime labTime, AccessLog looks) {
        this.report = report;
        this.labTime = labTime;
        this.looks = looks;
    }

    /** Days that were asked for. */
    record Stretch(LocalDate first, LocalDate last) {}

    /** A line of the table. */
    record Line(PersonUse use, String ahead) {}

    @GetMapping("/fairness")
    String show(
            @RequestParam(required = false) @Nullable String first,
            @RequestParam(required = false) @Nullable String last,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        looks.lookedAtMany(me.id(), Sight.USE, "all");
        Map<String, String> errors = new LinkedHashMap<>();
        Stretch stretch = stretch(first, last, errors);
        if (!errors.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        LabUse use = report.between(stretch.first(), stretch.last());
        model.addAttribute("errors", errors);
        model.addAttribute("first", errors.isEmpty() ? stretch.first().toString() : first);
        model.addAttribute("last", errors.isEmpty() ? stretch.last().toString() : last);
        model.addAttribute("days", labTime.day(stretch.first()) + " to " + labTime.day(stretch.last()));
        model.addAttribute("use", use);
        model.addAttribute("share", Math.round(use.share() * 100));
        model.addAttribute(
                "lines",
                use.people().stream()
                        .limit(SHOWN)
                        .map(one -> new Line(one, words(one.ahead())))
                        .toList());
        model.addAttribute("more", Math.max(0, use.people().size() - SHOWN));
        return "booking/fairness";
    }

    /** Days that cannot be get no file of other days, but what is wrong with them. */
    @GetMapping("/fairness/people.csv")
    void csv(
            @RequestParam(required = false) @Nullable String first,
            @RequestParam(required = false) @Nullable String last,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response)
            throws IOException {
        looks.lookedAtMany(me.id(), Sight.USE, "all");
        Map<String, String> errors = new LinkedHashMap<>();
        Stretch stretch = stretch(first, last, errors);
        if (!errors.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            response.setContentType("text/plain");
            response.setCharacterEncoding("UTF-8");
            response.getWriter().write(String.join("\n", errors.values()));
            return;
        }
        StringBuilder csv = new StringBuilder(
                "name,sections,slots,missed,late_cancels,excused,left_out,waited_in_vain,mean_wait_hours\r\n");
        for (PersonUse one : report.between(stretch.first(), stretch.last()).people()) {
            csv.append(String.join(
                            ",",
                            List.of(
                                    cell(one.name()),
                                    cell(one.sections()),
                                    String.valueOf(one.slots()),
                                    String.valueOf(one.missed()),
                                    String.valueOf(one.lateCancels()),
                                    String.valueOf(one.excused()),
                                    String.valueOf(one.unmet()),
                                    String.valueOf(one.waited()),
                                    one.ahead() == null ? "" : hours(one.ahead()))))
                    .append("\r\n");
        }
        TableFile.begin(response, "use-" + stretch.first() + ".csv").write(csv.toString());
    }

    /** A field after RFC 4180; what begins like a formula gets an apostrophe in front. */
    static String cell(String text) {
        return "\"" + TableCell.plain(text).replace("\"", "\"\"") + "\"";
    }

    private static String words(@Nullable Duration ahead) {
        if (ahead == null) {
            return "none";
        }
        return ahead.toHours() >= 48 ? ahead.toDays() + " days" : hours(ahead) + " h";
    }

    private static String hours(Duration ahead) {
        return String.format(Locale.ROOT, "%.1f", ahead.toMinutes() / 60.0);
    }

    private Stretch stretch(@Nullable String first, @Nullable String last, Map<String, String> errors) {
        LocalDate today = labTime.today();
        LocalDate from = day("first", first, today.minusDays(14), errors);
        LocalDate until = day("last", last, today.plusDays(14), errors);
        if (until.isBefore(from) || until.isAfter(from.plusDays(LONGEST - 1))) {
            errors.put("last", "Choose a last day 1 to " + LONGEST + " days from the first.");
            return new Stretch(today.minusDays(14), today.plusDays(14));
        }
        return new Stretch(from, until);
    }

    private static LocalDate day(String field, @Nullable String text, LocalDate usual, Map<String, String> errors) {
        if (text == null || text.isBlank()) {
            return usual;
        }
        try {
            return LocalDate.parse(text.strip());
        } catch (DateTimeException notADay) {
            errors.put(field, "Write a day as year-month-day.");
            return usual;
        }
    }
}
