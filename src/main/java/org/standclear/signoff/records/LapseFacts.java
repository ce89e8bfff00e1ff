package org.standclear.signoff.records;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.cell.Cell;
import org.standclear.cell.CellHistory;
import org.standclear.check.ProgramChecks;
import org.standclear.people.Authorisations;
import org.standclear.people.Duty;
import org.standclear.people.DutyRoster;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.RevisionId;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.signoff.Release;
import org.standclear.signoff.Turn;
import org.standclear.signoff.rules.LapseQuestion;

/** Reads the facts beside which a release is held. */
@Component
class LapseFacts {

    private final Programs programs;
    private final ProgramChecks checks;
    private final SheetRows sheets;
    private final People people;
    private final Authorisations authorisations;
    private final DutyRoster duty;
    private final CellHistory history;
    private final Turns turns;
    private final ReleaseRows releases;

    LapseFacts(
            Programs programs,
            ProgramChecks checks,
            SheetRows sheets,
            People people,
            Authorisations authorisations,
            DutyRoster duty,
            CellHistory history,
            Turns turns,
            ReleaseRows releases) {
        this.programs = programs;
        this.checks = checks;
        this.sheets = sheets;
        this.people = people;
        this.authorisations = authorisations;
        this.duty = duty;
        this.history = history;
        this.turns = turns;
        this.releases = releases;
    }

    LapseQuestion question(Release release, Booking booking, Cell cell, Instant now) {
        RevisionId attached = booking.revision();
        return new LapseQuestion(
                release,
                booking,
                cell,
                attached == null ? null : programs.find(attached).orElse(null),
                newer(release),
                answerInForce(release, booking),
                people.find(release.attendant()).map(Person::isLabStaff).orElse(false),
                ended(release, now),
                duty.onDuty(release.releaser(), now),
                people.printedName(release.releaser()),
                booking.attendant() == null ? null : people.printedName(booking.attendant()),
                turnOver(release, now),
                // a test between the opening of the list and the release makes the list void
                history.testedSince(cell.id(), sheets.before(release.sheet()).cell()),
                now);
    }

    private @Nullable String turnOver(Release release, Instant now) {
        Turn turn = turns.of(release.attendant(), now);
        if (!turn.told()) {
            return "How long " + people.printedName(release.attendant())
                    + " has been at the e-stop can no longer be told: the clock was set back. Somebody else takes it.";
        }
        return turn.over()
                ? "The turn of " + people.printedName(release.attendant()) + " at the e-stop is over ("
                        + turn.limit().toMinutes() + " min). Somebody else takes the next one."
                : null;
    }

    private boolean answerInForce(Release release, Booking booking) {
        return sheets.find(release.sheet())
                .filter(sheet -> checks.isInForce(sheet.answer(), booking.course(), booking.operator()))
                .isPresent();
    }

    private @Nullable Revision newer(Release release) {
        return programs.find(release.revision())
                .flatMap(revision ->
                        programs.revisions(revision.program()).stream().findFirst())
                .filter(latest -> releases.cameAfter(release, latest))
                .orElse(null);
    }

    private @Nullable String ended(Release release, Instant now) {
        if (!authorisations.holds(release.operator(), Duty.OPERATOR, release.cell(), now)) {
            return people.printedName(release.operator()) + " is no longer authorised as operator.";
        }
        return authorisations.holds(release.attendant(), Duty.ATTENDANT, release.cell(), now)
                ? null
                : people.printedName(release.attendant()) + " is no longer authorised as e-stop attendant.";
    }
}
