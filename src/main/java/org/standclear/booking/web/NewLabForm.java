package org.standclear.booking.web;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.OpenPeriod;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.security.Role;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.Zones;

/**
 * A lab that somebody wants to make, as the form was sent.
 *
 * @param hours when it opens from Monday to Friday
 * @param login who of the staff comes first; empty when nobody is appointed yet
 */
record NewLabForm(
        @Nullable String formToken,
        @Nullable String college,
        @Nullable String name,
        @Nullable String room,
        @Nullable String zone,
        @Nullable String hours,
        @Nullable String emergencyNumber,
        @Nullable String firstAider,
        @Nullable String stopMap,
        @Nullable String login,
        @Nullable String role) {

    static final NewLabForm EMPTY =
            new NewLabForm(null, "", "", "", "", "08:00-18:00", "", "", "", "", Role.TECHNICIAN.name());

    /** What the form says, read. */
    record Read(Lab lab, List<OpenPeriod> hours, String login, Role role) {}

    /** The lab; empty when a field cannot be kept, which then stands in the errors. */
    Optional<Read> read(Map<String, String> errors) {
        Lab lab = new Lab(
                LabId.next(),
                text("college", "College", college, 200, errors),
                text("room", "Room", room, 200, errors),
                text("name", "Name of the lab", name, 200, errors),
                zone(errors),
                text("emergencyNumber", "Emergency number", emergencyNumber, 40, errors),
                text("firstAider", "First-aider", firstAider, 200, errors),
                text("stopMap", "E-stops", stopMap, 400, errors));
        Role first = LabsPages.STAFF.stream()
                .filter(one -> one.name().equals(role))
                .findFirst()
                .orElse(Role.TECHNICIAN);
        Read read = new Read(
                lab, periods(errors), Objects.requireNonNullElse(login, "").strip(), first);
        return errors.isEmpty() ? Optional.of(read) : Optional.empty();
    }

    private ZoneId zone(Map<String, String> errors) {
        return Zones.read(Objects.requireNonNullElse(zone, "")).orElseGet(() -> {
            errors.put("zone", "Choose the zone that the lab's clocks show.");
            return ZoneId.of("UTC");
        });
    }

    private List<OpenPeriod> periods(Map<String, String> errors) {
        try {
            return PeriodsText.read(hours);
        } catch (PeriodsText.UnreadableException unreadable) {
            errors.put("hours", unreadable.says());
            return List.of();
        }
    }

    /** Names the field, so that the summary above the form says what is missing. */
    private static String text(
            String field, String label, @Nullable String raw, int longest, Map<String, String> errors) {
        PlainText.Checked checked = PlainText.check(raw, longest);
        if (checked instanceof PlainText.Refused refused) {
            errors.put(field, label + ": " + refused.says());
            return "";
        }
        return ((PlainText.Fine) checked).text();
    }
}
