package org.standclear.retention.records;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.retention.Candidate;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.retention.HoldMarks;
import org.standclear.platform.retention.KeepsBack;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.LabTime;
import org.standclear.retention.LegalHold;
import org.standclear.retention.LegalHold.Target;
import org.standclear.retention.records.HoldRows.Whose;

/** What legal holds keep back, and the words about them on other rooms' pages. */
@Component("holdMarks")
class HeldRecords implements KeepsBack, HoldMarks {

    /** Kinds that know a person and no run or incident: kept of everybody in a run or an incident that is held. */
    private static final Set<RecordKind> OF_A_PERSON = Set.of(
            RecordKind.ACCOUNTS,
            RecordKind.ADDRESSES,
            RecordKind.AUTHORISATIONS,
            RecordKind.MESSAGES,
            RecordKind.DUTY_PERIODS,
            RecordKind.EXCUSES,
            RecordKind.QUESTIONS,
            RecordKind.RUN_WORDS,
            RecordKind.TAG_REASONS,
            RecordKind.LAPSES,
            RecordKind.WAIVERS,
            RecordKind.PAPER_REMARKS,
            RecordKind.EXCEPTION_REMARKS,
            RecordKind.LOOKS,
            RecordKind.MEDICAL_LOOKS);

    private final HoldRows rows;
    private final Labs labs;
    private final LabTime labTime;

    HeldRecords(HoldRows rows, Labs labs, LabTime labTime) {
        this.rows = rows;
        this.labs = labs;
        this.labTime = labTime;
    }

    @Override
    public Reasons now() {
        LabId here = labs.theLab().id();
        Held own = new Held(
                rows.standing(here),
                rows.namedInHeldThings(here, Whose.THE_LABS),
                rows.textsOfHeldRuns(here, Whose.THE_LABS));
        Held others = new Held(
                rows.standingElsewhere(here),
                rows.namedInHeldThings(here, Whose.OTHER_LABS),
                rows.textsOfHeldRuns(here, Whose.OTHER_LABS));
        // that another lab holds somebody is that lab's to tell: the reason does not say it
        return (kind, record) ->
                holds(own, kind, record) ? "legal hold" : holds(others, kind, record) ? "another lab keeps it" : "";
    }

    /** Holds, the people named in what they hold, and the texts that ran in it. */
    private record Held(List<LegalHold> holds, Set<UUID> named, Set<UUID> texts) {}

    private boolean holds(Held held, RecordKind kind, Candidate record) {
        return held.holds().stream().anyMatch(hold -> covers(hold, kind, record))
                || (kind == RecordKind.PROGRAMS && held.texts().contains(record.id()))
                || (OF_A_PERSON.contains(kind)
                        && held.named().stream().anyMatch(one -> record.concerns(About.PERSON, one)));
    }

    private boolean covers(LegalHold hold, RecordKind kind, Candidate record) {
        if (hold.target() instanceof Target.One one) {
            return record.concerns(one.about(), one.id());
        }
        Target.Span span = (Target.Span) hold.target();
        LocalDate day = labTime.date(record.clockStart());
        LocalDate from = span.from();
        LocalDate until = span.until();
        return span.kind() == kind && (from == null || !day.isBefore(from)) && (until == null || !day.isAfter(until));
    }

    @Override
    public List<String> on(String about, Object id) {
        return rows.standingOn(labs.theLab().id(), About.valueOf(about), Id.parse(id.toString())).stream()
                .map(hold -> "On legal hold since " + labTime.full(hold.placedAt())
                        + ": nothing about it is disposed of until a second person lifts the legal hold.")
                .toList();
    }
}
