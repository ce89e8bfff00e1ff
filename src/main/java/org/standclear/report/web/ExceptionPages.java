package org.standclear.report.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.core.quantity.ShownNumber;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.LabTime;
import org.standclear.report.SignoffQualities;
import org.standclear.report.SignoffQuality;
import org.standclear.report.WeekExceptions;

/** The week's exceptions, to read and sign. */
@Controller
class ExceptionPages {

    private static final int LONGEST_REMARK = 800;

    private final WeekExceptions exceptions;
    private final SignoffQualities qualities;
    private final LabTime labTime;
    private final PostOnce once;

    ExceptionPages(WeekExceptions exceptions, SignoffQualities qualities, LabTime labTime, PostOnce once) {
        this.exceptions = exceptions;
        this.qualities = qualities;
        this.labTime = labTime;
        this.once = once;
    }

    @GetMapping("/exceptions")
    String week(@RequestParam(required = false) @Nullable String week, Model model) {
        return page(monday(week), Map.of(), "", model);
    }

    private LocalDate monday(@Nullable String week) {
        LocalDate day = labTime.today();
        try {
            day = week == null ? day : LocalDate.parse(week);
        } catch (DateTimeParseException notADate) {
            day = labTime.today();
        }
        return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    private String page(LocalDate monday, Map<String, String> errors, String remark, Model model) {
        WeekExceptions.Week week = exceptions.week(monday);
        model.addAttribute("week", week);
        String weekOf = labTime.day(monday) + " " + monday.getYear();
        model.addAttribute("weekOf", weekOf);
        model.addAttribute("headline", headline(week, weekOf));
        model.addAttribute("lines", week.lines().stream().map(this::line).toList());
        model.addAttribute("questions", questions(qualities.week(monday)));
        model.addAttribute("before", monday.minusWeeks(1).toString());
        model.addAttribute(
                "after",
                monday.plusWeeks(1).isAfter(labTime.today())
                        ? ""
                        : monday.plusWeeks(1).toString());
        model.addAttribute("errors", errors);
        model.addAttribute("remark", remark);
        return "report/exceptions";
    }

    /** A line as it is shown. */
    record LineView(String title, String words, String href, String read) {}

    private LineView line(WeekExceptions.Line line) {
        WeekExceptions.Read read = line.read();
        return new LineView(
                line.title(),
                line.words(),
                line.href(),
                read == null ? "" : "read by " + read.by() + ", " + labTime.full(read.at()) + remark(read));
    }

    private static String remark(WeekExceptions.Read read) {
        return read.remark().isEmpty() ? "" : ": " + read.remark();
    }

    private static String headline(WeekExceptions.Week week, String weekOf) {
        if (week.lines().isEmpty()) {
            return "Nothing to read in the week of " + weekOf;
        }
        return week.unread() == 0
                ? "All " + week.lines().size() + " lines of the week of " + weekOf + " are read and signed"
                : week.unread() + (week.unread() == 1 ? " line" : " lines") + " to read in the week of " + weekOf;
    }

    /** Of the whole lab, and as questions: numbers alone say nothing about anybody. */
    private static List<String> questions(SignoffQuality quality) {
        if (quality.lists() == 0) {
            return List.of("No full bench list was signed in this week.");
        }
        long first = quality.seconds().get(0);
        long last = quality.seconds().get(quality.lists() - 1);
        return List.of(
                quality.lists() + " full bench lists took, from the first signature to the last, " + first + " to "
                        + last + " s, the middle one " + ShownNumber.plain(quality.medianSeconds())
                        + " s; what is read before the first signature is not in it. Is there time to read, and to look?",
                quality.sameAsBefore() + " of " + quality.lists()
                        + " read the very same values as the list before on that cell. Were they read, or remembered?",
                quality.refused() + " lists ended without a release and " + quality.disagreements()
                        + " answers were read again. Is it easy to say no here? What came of it, when somebody did?");
    }

    @PostMapping("/exceptions")
    String sign(
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        LocalDate monday = monday(fields.get("week"));
        String typed = fields.getOrDefault("remark", "").strip();
        PlainText.Checked checked =
                typed.isEmpty() ? new PlainText.Fine("") : PlainText.checkLines(typed, LONGEST_REMARK);
        AtomicReference<String> says = new AtomicReference<>("");
        Optional<String> next = Optional.empty();
        if (checked instanceof PlainText.Fine fine) {
            next = once.run(fields.get("formToken"), () -> {
                WeekExceptions.Signed signed =
                        exceptions.sign(monday, fields.getOrDefault("sha256", ""), fine.text(), me.id());
                if (signed instanceof WeekExceptions.Signed.Refused refused) {
                    says.set(refused.says());
                    return null;
                }
                return "/exceptions?week=" + monday;
            });
        } else {
            says.set(((PlainText.Refused) checked).says());
        }
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(monday, Map.of("remark", says.get()), typed, model);
    }
}
