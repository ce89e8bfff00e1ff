package org.standclear.booking.web;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.standclear.core.forecast.Forecast;
import org.standclear.platform.time.LabTime;

/** Days as bars, what is wanted beside what the lab can give; drawn by the server in percent of the picture. */
record DayBars(List<Bar> bars) {

    /** Percent of the picture's height: the bars stand on the floor, their days are written below it. */
    private static final double FLOOR = 78;

    private static final double TALLEST = 68;
    private static final double ROOM = 0.8;

    /** So many days can be written below their bars on a phone; with more, every second is, or every third. */
    private static final int WRITTEN = 12;

    private static final DateTimeFormatter WEEKDAY = DateTimeFormatter.ofPattern("EEE", Locale.ENGLISH);

    DayBars {
        bars = List.copyOf(bars);
    }

    /**
     * One day.
     *
     * @param x left edge, and the others, in percent of the picture's width or height
     * @param y upper edge of what is wanted
     * @param limitY where the lab's capacity lies
     * @param right right edge
     * @param middle where the day is written
     * @param weekday what is written below the bar, with its date; empty where days would run into one another
     * @param over whether more is wanted than the lab can give
     */
    record Bar(
            String x,
            String width,
            String right,
            String middle,
            String y,
            String height,
            String limitY,
            boolean over,
            String day,
            String weekday,
            String date,
            String wanted,
            String taken,
            int turns,
            String use) {}

    /** The days from the first wanted one to the last. */
    static DayBars of(Forecast forecast, LabTime labTime) {
        List<Forecast.Day> shown = shown(forecast);
        double most = shown.stream()
                .mapToDouble(day -> Math.max(day.wanted(), day.turns()))
                .max()
                .orElse(1);
        List<Bar> bars = new ArrayList<>();
        double step = 100.0 / Math.max(1, shown.size());
        int every = (shown.size() + WRITTEN - 1) / WRITTEN;
        for (int index = 0; index < shown.size(); index++) {
            Forecast.Day day = shown.get(index);
            double height = TALLEST * day.wanted() / most;
            boolean written = index % every == 0;
            bars.add(new Bar(
                    percent(index * step),
                    percent(step * ROOM),
                    percent(index * step + step * ROOM),
                    percent(index * step + step * ROOM / 2),
                    percent(FLOOR - height),
                    percent(height),
                    percent(FLOOR - TALLEST * day.turns() / most),
                    day.wanted() > day.turns(),
                    labTime.day(day.date()),
                    written ? WEEKDAY.format(day.date()) : "",
                    written ? String.valueOf(day.date().getDayOfMonth()) : "",
                    String.format(Locale.ROOT, "%.1f", day.wanted()),
                    String.format(Locale.ROOT, "%.0f", day.taken()),
                    day.turns(),
                    ReleaseForecast.percent(day.use())));
        }
        return new DayBars(bars);
    }

    private static List<Forecast.Day> shown(Forecast forecast) {
        List<Forecast.Day> open = forecast.days().stream()
                .filter(day -> day.turns() > 0 || day.wanted() > 0)
                .toList();
        int first = 0;
        int last = open.size() - 1;
        while (first < last && open.get(first).wanted() == 0) {
            first++;
        }
        while (last > first && open.get(last).wanted() == 0) {
            last--;
        }
        return open.isEmpty() ? open : open.subList(first, last + 1);
    }

    private static String percent(double value) {
        return String.format(Locale.ROOT, "%.2f%%", value);
    }
}
