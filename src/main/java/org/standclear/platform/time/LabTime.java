package org.standclear.platform.time;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.Labs;

/** Shows instants in the zone of the lab that the present work is for; templates reach it as {@code @labTime}. */
@Component("labTime")
public class LabTime {

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter SECONDS = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ENGLISH);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);
    private static final DateTimeFormatter WEEKDAY = DateTimeFormatter.ofPattern("EEE", Locale.ENGLISH);
    private static final DateTimeFormatter FULL = DateTimeFormatter.ofPattern("EEE d MMM yyyy HH:mm", Locale.ENGLISH);

    private final Labs labs;
    private final Clock clock;

    LabTime(Labs labs, Clock clock) {
        this.labs = labs;
        this.clock = clock;
    }

    /** The lab's zone. */
    public ZoneId zone() {
        return labs.theLab().zone();
    }

    /** This instant, by the application's clock. */
    public Instant now() {
        return clock.instant();
    }

    /** The date now, in the lab. */
    public LocalDate today() {
        return date(clock.instant());
    }

    /** The lab's date at an instant. */
    public LocalDate date(Instant at) {
        return at.atZone(zone()).toLocalDate();
    }

    /** "14:07"; in an hour that comes twice, because the clocks go back, "02:30 (+01:00)". */
    public String time(Instant at) {
        ZonedDateTime local = in(at);
        return TIME.format(local) + whichOfTwo(local);
    }

    /** "14:07:31". */
    public String seconds(Instant at) {
        return SECONDS.format(in(at));
    }

    /** "Thu 26 Nov". */
    public String day(Instant at) {
        return DAY.format(in(at));
    }

    /** "Thu 26 Nov". */
    public String day(LocalDate date) {
        return DAY.format(date);
    }

    /** "Thu 26 Nov 2026 14:07". */
    public String full(Instant at) {
        ZonedDateTime local = in(at);
        return FULL.format(local) + whichOfTwo(local);
    }

    /** "14:07" of an instant of today, "Thu 26 Nov 2026 14:07" of one of another day: for what can be old. */
    public String lately(Instant at) {
        return isToday(at) ? time(at) : full(at);
    }

    /** Whether the instant is on the lab's date of now. */
    public boolean isToday(Instant at) {
        return date(at).equals(today());
    }

    /** "Thu 26 Nov 14:07-14:37": for a time that need not lie in the days around. */
    public String datedSpan(Instant from, Instant until) {
        return day(from) + " " + times(from, until);
    }

    /**
     * "14:07-14:37". Where the clocks change in between, both ends say how far they are from UTC: else half an hour from
     * 01:30 to 03:00 would read as one and a half.
     */
    public String times(Instant from, Instant until) {
        ZonedDateTime start = in(from);
        ZonedDateTime end = in(until);
        boolean same = start.getOffset().equals(end.getOffset());
        return same
                ? time(from) + "-" + time(until)
                : TIME.format(start) + offset(start) + "-" + TIME.format(end) + offset(end);
    }

    /** "Thu 14:07-14:37". */
    public String span(Instant from, Instant until) {
        return WEEKDAY.format(in(from)) + " " + times(from, until);
    }

    /** "2026-11-26T14:07:00+01:00", for {@code datetime} attributes and exports. */
    public String iso(Instant at) {
        return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(in(at));
    }

    private static String whichOfTwo(ZonedDateTime local) {
        List<ZoneOffset> offsets = local.getZone().getRules().getValidOffsets(local.toLocalDateTime());
        return offsets.size() > 1 ? offset(local) : "";
    }

    private static String offset(ZonedDateTime local) {
        return " (" + local.getOffset() + ")";
    }

    private ZonedDateTime in(Instant at) {
        return at.atZone(zone());
    }
}
