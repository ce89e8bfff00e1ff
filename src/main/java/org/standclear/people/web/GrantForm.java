package org.standclear.people.web;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.people.AuthorisationRegister.Grant;
import org.standclear.people.AuthorisationRegister.Granted;
import org.standclear.people.Duty;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.CellNames;
import org.standclear.platform.time.LabTime;

/** Reads the form for an authorisation: whole days in the lab's zone, the last one included. */
@Component
class GrantForm {

    private final CellNames cells;
    private final LabTime labTime;
    private final Clock clock;

    GrantForm(CellNames cells, LabTime labTime, Clock clock) {
        this.cells = cells;
        this.labTime = labTime;
        this.clock = clock;
    }

    /** What stands in a fresh form: from today, for half a year. */
    Map<String, String> plain() {
        LocalDate today = labTime.today();
        return Map.of("from", today.toString(), "until", today.plusMonths(6).toString(), "duty", Duty.OPERATOR.name());
    }

    Optional<Grant> read(Typed typed, PersonId person, PersonId by) {
        Duty duty = duty(typed);
        CellId cell = cell(typed);
        LocalDate from = typed.date("from");
        LocalDate until = typed.date("until");
        String reason = typed.text("reason", 400);
        if (until != null && until.isBefore(labTime.today())) {
            typed.refuse("until", "That day is over. Choose a later end.");
        }
        if (!typed.errors().isEmpty() || duty == null || from == null || until == null) {
            return Optional.empty();
        }
        return Optional.of(new Grant(
                person,
                duty,
                cell,
                from.atStartOfDay(labTime.zone()).toInstant(),
                until.plusDays(1).atStartOfDay(labTime.zone()).toInstant(),
                reason,
                by));
    }

    private static @Nullable Duty duty(Typed typed) {
        for (Duty duty : Duty.values()) {
            if (duty.name().equals(typed.raw("duty"))) {
                return duty;
            }
        }
        typed.refuse("duty", "Choose what the person may do.");
        return null;
    }

    private @Nullable CellId cell(Typed typed) {
        String chosen = typed.raw("cell");
        if (chosen.isEmpty()) {
            return null;
        }
        for (CellId cell : cells.all().keySet()) {
            if (cell.toString().equals(chosen)) {
                return cell;
            }
        }
        typed.refuse("cell", "Choose one of the lab's cells, or every cell.");
        return new CellId(new UUID(0, 0));
    }

    AuthorisationView view(Granted granted, LabTime time) {
        return AuthorisationView.of(granted, cells.all(), time, clock.instant());
    }
}
