package org.standclear.people.web;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.people.Authorisation;
import org.standclear.people.AuthorisationRegister.Granted;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.time.LabTime;

/**
 * An authorisation as pages show it.
 *
 * @param state the mark's shape: valid, due, waiting, expired
 * @param words the mark's words: "until Tue 30 Jun 2026"
 * @param standing whether it can still be revoked
 */
record AuthorisationView(
        UUID id, String duty, String cell, String state, String words, String reason, boolean standing) {

    /** From then on the page says that the end comes near. */
    private static final Duration SOON = Duration.ofDays(14);

    static AuthorisationView of(Granted granted, Map<CellId, String> cells, LabTime time, Instant now) {
        Authorisation authorisation = granted.authorisation();
        return new AuthorisationView(
                granted.id(),
                authorisation.duty().words(),
                cell(authorisation.cell(), cells),
                state(authorisation, now),
                words(granted, time, now),
                granted.revokeReason() == null
                        ? granted.reason()
                        : granted.reason() + " Revoked: " + granted.revokeReason(),
                now.isBefore(authorisation.validUntil()));
    }

    private static String cell(@Nullable CellId cell, Map<CellId, String> cells) {
        return cell == null ? "every cell" : cells.getOrDefault(cell, "a cell that is gone");
    }

    static String state(Authorisation authorisation, Instant now) {
        if (!now.isBefore(authorisation.validUntil())) {
            return "expired";
        }
        if (now.isBefore(authorisation.validFrom())) {
            return "waiting";
        }
        return now.plus(SOON).isBefore(authorisation.validUntil()) ? "valid" : "due";
    }

    private static String words(Granted granted, LabTime time, Instant now) {
        Authorisation authorisation = granted.authorisation();
        if (granted.isRevoked()) {
            return "revoked " + time.day(authorisation.validUntil());
        }
        // the end itself is not included: midnight is still the day before
        String last = time.day(authorisation.validUntil().minusSeconds(1));
        return switch (state(authorisation, now)) {
            case "expired" -> "expired after " + last;
            case "waiting" -> "from " + time.day(authorisation.validFrom()) + " until " + last;
            default -> "until " + last;
        };
    }
}
