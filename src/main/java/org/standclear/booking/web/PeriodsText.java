package org.standclear.booking.web;

import java.time.DateTimeException;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.OpenPeriod;

/** Opening periods as people write them: "08:00-12:00, 13:00-18:00", nothing for closed. */
final class PeriodsText {

    private static final int MOST = 6;

    private PeriodsText() {}

    /** Why a text could not be read, for its field. */
    static final class UnreadableException extends Exception {
        private static final long serialVersionUID = 1L;

        UnreadableException(String says) {
            super(says);
        }

        String says() {
            return String.valueOf(getMessage());
        }
    }

    static String write(List<OpenPeriod> periods) {
        return periods.stream()
                .map(period -> period.opens() + "-" + period.closes())
                .collect(Collectors.joining(", "));
    }

    /** For sentences: "closed" instead of nothing. */
    static String words(List<OpenPeriod> periods) {
        return periods.isEmpty() ? "closed" : write(periods);
    }

    static List<OpenPeriod> read(@Nullable String text) throws UnreadableException {
        List<OpenPeriod> periods = new ArrayList<>();
        String plain = text == null ? "" : text.strip();
        if (plain.isEmpty()) {
            return periods;
        }
        for (String part : plain.split(",", -1)) {
            periods.add(period(part.strip()));
        }
        periods.sort(Comparator.comparing(OpenPeriod::opens));
        for (int i = 1; i < periods.size(); i++) {
            if (periods.get(i).opens().isBefore(periods.get(i - 1).closes())) {
                throw new UnreadableException(write(periods.subList(i - 1, i + 1)) + " overlap.");
            }
        }
        if (periods.size() > MOST) {
            throw new UnreadableException("Write " + MOST + " periods at most.");
        }
        return periods;
    }

    private static OpenPeriod period(String part) throws UnreadableException {
        String[] ends = part.split("[-–]", -1);
        if (ends.length != 2) {
            throw unreadable(part);
        }
        LocalTime opens = time(ends[0].strip(), part);
        LocalTime closes = time(ends[1].strip(), part);
        if (!opens.isBefore(closes)) {
            throw new UnreadableException("\"" + part + "\" ends before it begins; hours end within their day.");
        }
        return new OpenPeriod(opens, closes);
    }

    private static LocalTime time(String text, String part) throws UnreadableException {
        try {
            LocalTime time = LocalTime.parse(text.length() == 4 ? "0" + text : text);
            if (time.getSecond() != 0 || time.getNano() != 0) {
                throw new UnreadableException("\"" + part + "\" has seconds; write whole minutes.");
            }
            return time;
        } catch (DateTimeException noSuchTime) {
            throw unreadable(part);
        }
    }

    private static UnreadableException unreadable(String part) {
        return new UnreadableException(
                "\"" + part + "\" cannot be read. Write it as 08:00-12:00, 13:00-18:00, or leave it empty for closed.");
    }
}
