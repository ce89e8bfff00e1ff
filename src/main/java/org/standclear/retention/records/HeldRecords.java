package org.standclear.retention.records;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.standclear.platform.ids.Id;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.retention.Candidate;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.retention.HoldMarks;
import org.standclear.platform.retention.KeepsBack;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.LabTime;
import org.standclear.retention.LegalHold;
import org.standclear.retention.LegalHold.Target;

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
            RecordKind.LOOKS);

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
        List<LegalHold> standing = rows.standing(labs.theLab().id());
        Set<UUID> named = rows.namedInHeldThings();
        Set<UUID> texts = rows.textsOfHeldRuns();
        return (kind, record) -> standing.stream().anyMatch(hold -> covers(hold, kind, record))
                        || (kind == RecordKind.PROGRAMS && texts.contains(record.id()))
                        || (OF_A_PERSON.contains(kind)
                                && named.stream().anyMatch(one -> record.concerns(About.PERSON, one)))
                ? "legal hold"
                : "";
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
        return rows.standingOn(About.valueOf(about), Id.parse(id.toString())).stream()
                .map(hold -> "On legal hold since " + labTime.full(hold.placedAt())
                        + ": nothing about it is disposed of until a second person lifts the legal hold.")
                .toList();
    }
}
