package org.standclear.desk.web;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.standclear.cell.Cell;
import org.standclear.check.AnswerBrief;
import org.standclear.check.ProgramChecks;
import org.standclear.check.StoredAnswer;
import org.standclear.people.Authorisation;
import org.standclear.people.Authorisations;
import org.standclear.people.SigningPins;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;
import org.standclear.program.Programs;
import org.standclear.program.Revision;

/** A person's programs with their answers, and what the person is authorised for. */
@Component
class MyPapers {

    private static final int PROGRAMS_SHOWN = 8;
    private static final Duration SOON = Duration.ofDays(30);

    private final Programs programs;
    private final ProgramChecks checks;
    private final Authorisations authorisations;
    private final SigningPins pins;
    private final LabTime labTime;

    MyPapers(
            Programs programs, ProgramChecks checks, Authorisations authorisations, SigningPins pins, LabTime labTime) {
        this.programs = programs;
        this.checks = checks;
        this.authorisations = authorisations;
        this.pins = pins;
        this.labTime = labTime;
    }

    boolean signsWithPin(PersonId person) {
        return pins.isSet(person);
    }

    List<MyView.ProgramLine> programs(PersonId author) {
        return programs.latestOf(author).stream()
                .limit(PROGRAMS_SHOWN)
                .map(this::line)
                .toList();
    }

    private MyView.ProgramLine line(Revision revision) {
        Optional<AnswerBrief> last = checks.briefFor(revision.id()).stream().findFirst();
        return new MyView.ProgramLine(
                "/programs/" + revision.program(),
                revision.title() + ", revision " + revision.number(),
                revision.fingerprintEnd(),
                last.map(answer -> state(answer.verdict())).orElse("unknown"),
                last.map(answer -> answer.verdict().words()).orElse("not checked yet"));
    }

    /** The verdict's key in the look's list of states. */
    static String state(StoredAnswer.Verdict verdict) {
        return switch (verdict) {
            case WITHIN -> "within";
            case OUTSIDE -> "outside";
            case NOT_CHECKABLE -> "not-checkable";
        };
    }

    List<MyView.Authorised> authorisations(PersonId person, Map<CellId, Cell> cells, Instant now) {
        return authorisations.of(person).stream()
                .map(one -> authorised(one, cells, now))
                .toList();
    }

    boolean authorisedNow(PersonId person, Instant now) {
        return authorisations.of(person).stream()
                .anyMatch(one -> !now.isBefore(one.validFrom()) && now.isBefore(one.validUntil()));
    }

    private MyView.Authorised authorised(Authorisation one, Map<CellId, Cell> cells, Instant now) {
        Cell cell = one.cell() == null ? null : cells.get(one.cell());
        boolean expired = !now.isBefore(one.validUntil());
        boolean begins = now.isBefore(one.validFrom());
        boolean soon = !expired && one.validUntil().isBefore(now.plus(SOON));
        return new MyView.Authorised(
                one.duty().words(),
                one.cell() == null ? "every cell" : cell == null ? "a cell" : cell.name(),
                labTime.full(one.validUntil()),
                expired ? "expired" : begins ? "waiting" : soon ? "due" : "valid",
                expired ? "expired" : begins ? "not yet valid" : soon ? "expires soon" : "valid");
    }
}
