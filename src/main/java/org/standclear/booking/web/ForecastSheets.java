package org.standclear.booking.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.standclear.core.forecast.Arrival;
import org.standclear.core.forecast.DueWave;
import org.standclear.core.forecast.Forecast;
import org.standclear.core.forecast.Staggering;
import org.standclear.core.forecast.Staggering.Suggestion;
import org.standclear.people.DueDates.DueAssignment;
import org.standclear.people.DueDates.DueSection;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.time.LabTime;

/** The forecast of one assignment: use per day as asked and with due dates staggered, and the waits for release. */
@Component
class ForecastSheets {

    /** How far around the asked due dates the suggestion looks, in days. */
    private static final int LOOKS = 9;

    private final LabCapacity capacity;
    private final ReleaseForecast releases;
    private final LabTime labTime;

    ForecastSheets(LabCapacity capacity, ReleaseForecast releases, LabTime labTime) {
        this.capacity = capacity;
        this.releases = releases;
        this.labTime = labTime;
    }

    String page(DueAssignment assignment, ForecastForm form, Map<String, String> seenErrors, Model model) {
        Map<String, String> errors = new LinkedHashMap<>(seenErrors);
        Map<SectionId, LocalDate> days = form.days(assignment, labTime, errors);
        Arrival arrival = form.arrival(errors);
        List<DueWave> asked = waves(assignment, days, form.pairs());
        LocalDate first = days.values().stream().min(LocalDate::compareTo).orElse(labTime.today());
        LocalDate last = days.values().stream().max(LocalDate::compareTo).orElse(labTime.today());
        LocalDate from = labTime.today();
        LocalDate until = last.plusDays(LOOKS);
        LabCapacity.Days lab = capacity.between(from, until.isBefore(from) ? from : until, assignment.id());
        Forecast forecast = Forecast.of(asked, arrival, lab.lab(), lab.taken());
        LocalDate earliest = first.isBefore(from) ? from : first;
        Suggestion staggered =
                new Staggering(arrival, lab.lab(), lab.taken()).suggest(asked, earliest, last.plusDays(LOOKS));
        model.addAttribute("assignment", assignment);
        model.addAttribute("form", form);
        model.addAttribute("values", form.values(assignment, labTime));
        model.addAttribute("errors", errors);
        model.addAttribute("headline", headline(forecast));
        model.addAttribute("says", says(forecast));
        model.addAttribute("bars", DayBars.of(forecast, labTime).bars());
        model.addAttribute("suggested", suggested(assignment, asked, staggered));
        model.addAttribute("suggestedSays", staggers(staggered.forecast(), forecast));
        model.addAttribute(
                "suggestedBars", DayBars.of(staggered.forecast(), labTime).bars());
        model.addAttribute("suggestedQuery", query(assignment, staggered.waves()));
        model.addAttribute("askedQuery", query(assignment, asked));
        model.addAttribute("helps", crowded(forecast) && staggered.forecast().presses(forecast));
        model.addAttribute("crowded", crowded(forecast));
        model.addAttribute("tried", tried(asked));
        model.addAttribute("looks", LOOKS);
        model.addAttribute("waits", releases.waits());
        return "booking/forecast";
    }

    private static List<DueWave> waves(DueAssignment assignment, Map<SectionId, LocalDate> days, boolean pairs) {
        List<DueWave> waves = new ArrayList<>();
        for (DueSection section : assignment.sections()) {
            int units = pairs ? (section.students() + 1) / 2 : section.students();
            waves.add(new DueWave(
                    section.code(), units, assignment.minimumRuns(), days.getOrDefault(section.id(), LocalDate.MIN)));
        }
        return waves;
    }

    private String headline(Forecast forecast) {
        if (forecast.withoutDay() > 0) {
            return without(forecast);
        }
        return forecast.peak()
                .map(day -> labTime.day(day.date()) + " is at " + ReleaseForecast.percent(day.use())
                        + " of what the lab can give")
                .orElse("Nothing is wanted of the lab's days");
    }

    private static String without(Forecast forecast) {
        return String.format(
                Locale.ROOT, "%.0f turns have no open day left before their due date", forecast.withoutDay());
    }

    /** What the suggestion gets better, first; turns that get a day may raise the peak. */
    private static String staggers(Forecast staggered, Forecast asked) {
        double withDay = asked.withoutDay() - staggered.withoutDay();
        String peak = ReleaseForecast.percent(staggered.peakUse());
        String better = withDay > 0
                ? String.format(
                        Locale.ROOT,
                        "%.0f of the %.0f turns without an open day get one; the peak is then at %s. ",
                        withDay,
                        asked.withoutDay(),
                        peak)
                : "The peak falls to " + peak + ". ";
        return better + says(staggered) + (staggered.withoutDay() > 0 ? " " + without(staggered) + "." : "");
    }

    /** Whether there is anything to press down: moving due dates costs people their plans. */
    private static boolean crowded(Forecast forecast) {
        return forecast.withoutDay() > 0 || forecast.peakUse() > 1;
    }

    private static String says(Forecast forecast) {
        String share = ReleaseForecast.percent(forecast.shareNotServed());
        if (share.equals("0 %") && forecast.withoutDay() == 0) {
            return "Every turn of this assignment is given on the day it is wanted.";
        }
        return share + " of this assignment's turns are not given on the day they are wanted.";
    }

    private String tried(List<DueWave> asked) {
        return "Due: "
                + asked.stream()
                        .map(one -> "section " + one.section() + " " + labTime.day(one.due()))
                        .collect(Collectors.joining(", "));
    }

    /** A section with the day suggested. */
    record SuggestedDay(String section, String before, String after, boolean moves) {}

    private List<SuggestedDay> suggested(DueAssignment assignment, List<DueWave> asked, Suggestion staggered) {
        List<SuggestedDay> days = new ArrayList<>();
        for (int section = 0; section < asked.size(); section++) {
            LocalDate before = asked.get(section).due();
            LocalDate after = staggered.waves().get(section).due();
            days.add(new SuggestedDay(
                    assignment.sections().get(section).code(),
                    labTime.day(before),
                    labTime.day(after),
                    !before.equals(after)));
        }
        return days;
    }

    private static String query(DueAssignment assignment, List<DueWave> waves) {
        List<String> parts = new ArrayList<>();
        for (int section = 0; section < waves.size(); section++) {
            parts.add(ForecastForm.field(assignment.sections().get(section).id()) + "="
                    + waves.get(section).due());
        }
        return parts.stream().collect(Collectors.joining("&", "?", ""));
    }
}
