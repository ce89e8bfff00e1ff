package org.standclear.booking.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.standclear.core.forecast.Forecast;
import org.standclear.platform.time.LabTime;

/** Days as bars, what is wanted beside what the lab can give; drawn by the server in percent of the picture. */
record DayBars(List<Bar> bars) {

    private static final double TOP = 90;
    private static final double ROOM = 0.8;

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
     * @param over whether more is wanted than the lab can give
     */
    record Bar(
            String x,
            String width,
            String right,
            String y,
            String height,
            String limitY,
            boolean over,
            String day,
            String wanted,
            String taken,
            int turns,
            String use) {}

    /** The days from the first wanted one to the last. */
    static DayBars of(Forecast forecast, LabTime labTime) {
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
        List<Forecast.Day> shown = open.isEmpty() ? open : open.subList(first, last + 1);
        double most = shown.stream()
                .mapToDouble(day -> Math.max(day.wanted(), day.turns()))
                .max()
                .orElse(1);
        List<Bar> bars = new ArrayList<>();
        double step = 100.0 / Math.max(1, shown.size());
        for (int index = 0; index < shown.size(); index++) {
            Forecast.Day day = shown.get(index);
            double height = TOP * day.wanted() / most;
            bars.add(new Bar(
                    percent(index * step),
                    percent(step * ROOM),
                    percent(index * step + step * ROOM),
                    percent(100 - height),
                    percent(height),
                    percent(100 - TOP * day.turns() / most),
                    day.wanted() > day.turns(),
                    labTime.day(day.date()),
                    String.format(Locale.ROOT, "%.1f", day.wanted()),
                    String.format(Locale.ROOT, "%.0f", day.taken()),
                    day.turns(),
                    ReleaseForecast.percent(day.use())));
        }
        return new DayBars(bars);
    }

    private static String percent(double value) {
        return String.format(Locale.ROOT, "%.2f%%", value);
    }
}
