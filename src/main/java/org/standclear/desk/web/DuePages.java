package org.standclear.desk.web;

import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.cell.DayTests;
import org.standclear.cell.DutyDue;
import org.standclear.cell.RecurringDuties;
import org.standclear.cell.RecurringDuty;
import org.standclear.desk.web.DatedDuties.Due;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** What falls due on the cells, as a page and as a calendar file. */
@Controller
class DuePages {

    private final Cells cells;
    private final RecurringDuties duties;
    private final DatedDuties dated;
    private final DayTests dayTests;
    private final EndingAuthorisations ending;
    private final Labs labs;
    private final LabTime labTime;
    private final Clock clock;

    DuePages(
            Cells cells,
            RecurringDuties duties,
            DatedDuties dated,
            DayTests dayTests,
            EndingAuthorisations ending,
            Labs labs,
            LabTime labTime,
            Clock clock) {
        this.cells = cells;
        this.duties = duties;
        this.dated = dated;
        this.dayTests = dayTests;
        this.ending = ending;
        this.labs = labs;
        this.labTime = labTime;
        this.clock = clock;
    }

    @GetMapping("/due")
    String show(@AuthenticationPrincipal SignedInPerson me, Model model) {
        LocalDate today = labTime.today();
        List<Due> all = new ArrayList<>(dayTests(today));
        dated.all().forEach(one -> all.add(dated.line(one)));
        List<Due> late =
                all.stream().filter(due -> due.state().equals("failed")).toList();
        Map<String, List<Due>> months = new LinkedHashMap<>();
        all.stream()
                .filter(due -> !due.state().equals("failed"))
                .forEach(due -> months.computeIfAbsent(month(due.on()), month -> new ArrayList<>())
                        .add(due));
        model.addAttribute("late", late);
        model.addAttribute("months", months);
        model.addAttribute("without", without());
        model.addAttribute("ending", ending.byCell(me));
        model.addAttribute("staff", me.isLabStaff());
        model.addAttribute("headline", headline(late, all));
        return "desk/due";
    }

    @GetMapping("/due.ics")
    ResponseEntity<byte[]> file(@AuthenticationPrincipal SignedInPerson me) {
        List<DueCalendar.Day> days = new ArrayList<>(dated.all().stream()
                .map(one -> new DueCalendar.Day(
                        one.due().duty().code() + "-" + one.cell().id() + "@standclear",
                        one.due().due(),
                        one.cell().name() + ": " + one.due().duty().words() + " due",
                        one.due().duty().mend() + "; every " + one.due().intervalDays()
                                + " days. After this day there is no release on "
                                + one.cell().name()
                                + " until it is recorded."))
                .toList());
        days.addAll(ending.days(me));
        return ResponseEntity.ok()
                .contentType(MediaType.parseMediaType("text/calendar;charset=UTF-8"))
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"due.ics\"")
                .body(DueCalendar.of(labs.theLab().name() + ": what falls due", days, clock.instant()));
    }

    private List<Due> dayTests(LocalDate today) {
        return cells.all().stream()
                .filter(cell -> cell.state().mayRun())
                .filter(cell -> dayTests.passedOn(cell.id(), today).isEmpty())
                .map(cell -> new Due(
                        today,
                        labTime.day(today),
                        "day test",
                        cell.name(),
                        "/cells/" + cell.id(),
                        "due",
                        "today, gates every release"))
                .toList();
    }

    /** Cells on which something has no interval, which is said rather than taken for nothing to do. */
    private List<String> without() {
        List<String> without = new ArrayList<>();
        for (Cell cell : cells.all()) {
            List<DutyDue> due = duties.due(cell.id());
            for (RecurringDuty duty : RecurringDuty.values()) {
                if (due.stream().noneMatch(one -> one.duty() == duty)) {
                    without.add(cell.name() + ": " + duty.words());
                }
            }
        }
        return without;
    }

    private static String month(LocalDate day) {
        YearMonth month = YearMonth.from(day);
        return month.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH) + " " + month.getYear();
    }

    private static String headline(List<Due> late, List<Due> all) {
        if (!late.isEmpty()) {
            return late.size() == 1
                    ? "Overdue: " + late.get(0).what() + " of " + late.get(0).cell() + "."
                    : late.size() + " are overdue; no release there.";
        }
        return all.isEmpty()
                ? "Nothing falls due."
                : "Next: " + all.get(0).what() + " of " + all.get(0).cell() + ", "
                        + all.get(0).day() + ".";
    }
}
