package org.standclear.report.web;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cell;
import org.standclear.cell.CellStates;
import org.standclear.cell.CellTag;
import org.standclear.cell.Cells;
import org.standclear.incident.CorrectiveAction;
import org.standclear.incident.CorrectiveActions;
import org.standclear.incident.Incident;
import org.standclear.incident.Incidents;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.report.OwnRecords;
import org.standclear.run.Run;
import org.standclear.signoff.Signature;
import org.standclear.signoff.SignoffRecord;
import org.standclear.trail.RecordedEntry;
import org.standclear.trail.TrailReader;

/** What came of a run: incidents, what was done about them, what hung on the cell, questions, entries of the record. */
@Component
class RunAfter {

    private final Incidents incidents;
    private final CorrectiveActions actions;
    private final CellStates states;
    private final Cells cells;
    private final Bookings bookings;
    private final SignoffRecord signed;
    private final OwnRecords records;
    private final TrailReader trail;
    private final Labs labs;
    private final LabTime labTime;

    RunAfter(
            Incidents incidents,
            CorrectiveActions actions,
            CellStates states,
            Cells cells,
            Bookings bookings,
            SignoffRecord signed,
            OwnRecords records,
            TrailReader trail,
            Labs labs,
            LabTime labTime) {
        this.incidents = incidents;
        this.actions = actions;
        this.states = states;
        this.cells = cells;
        this.bookings = bookings;
        this.signed = signed;
        this.records = records;
        this.trail = trail;
        this.labs = labs;
        this.labTime = labTime;
    }

    List<RunPart> of(Run run, Called called) {
        List<Incident> reported = incidents.ofRun(run.id());
        return List.of(
                incidents(reported, called),
                actions(reported, called),
                tags(run, reported, called),
                questions(run, called),
                entries(run, reported, called));
    }

    private RunPart incidents(List<Incident> reported, Called called) {
        List<List<String>> rows = reported.stream()
                .map(one -> List.of(
                        "no. " + one.number(),
                        labTime.full(one.happenedAt()),
                        one.kind().label(),
                        called.text(one.sentence()),
                        one.state().words() + (one.formIsDue() ? ", form due" : "")))
                .toList();
        return new RunPart(
                "Incidents",
                "None was reported of this run.",
                List.of("Incident", "Happened", "Class", "What", "State"),
                rows,
                reported.stream().map(one -> "/incidents/" + one.id()).toList());
    }

    private RunPart actions(List<Incident> reported, Called called) {
        List<List<String>> rows = new ArrayList<>();
        for (Incident incident : reported) {
            for (CorrectiveAction action : actions.of(incident.id())) {
                rows.add(List.of(
                        "no. " + incident.number(),
                        called.text(action.words()),
                        action.level().words(),
                        called.name(action.owner()),
                        labTime.day(action.dueOn()),
                        became(action, called)));
            }
        }
        return RunPart.of(
                "Corrective actions",
                "None was agreed because of this run.",
                List.of("Incident", "Action", "Level", "Owner", "Due", "What became of it"),
                rows);
    }

    private String became(CorrectiveAction action, Called called) {
        CorrectiveAction.Done done = action.done();
        CorrectiveAction.Checked checked = action.checked();
        if (done == null) {
            return "open";
        }
        String words = "done " + labTime.full(done.at()) + " by " + called.name(done.by());
        if (checked == null) {
            return words + "; did it help? look on " + labTime.day(done.checkDueOn());
        }
        return words + "; " + (checked.effective() ? "it helped" : "it did not help") + ", looked at "
                + labTime.full(checked.at()) + " by " + called.name(checked.by());
    }

    /** Tags that hung at any time from the slot's beginning to the last that was reported or done of the run. */
    private RunPart tags(Run run, List<Incident> reported, Called called) {
        Booking booking = bookings.find(run.booking()).orElseThrow();
        Instant until = reported.stream()
                .map(Incident::reportedAt)
                .reduce(later(booking.end(), run.closedOutAt()), RunAfter::later);
        List<List<String>> rows = states.tags(run.cell()).stream()
                .filter(tag -> !tag.placedAt().isAfter(until))
                .filter(tag -> hungAt(tag, booking.start()))
                .sorted(Comparator.comparing(CellTag::placedAt))
                .map(tag -> row(tag, called))
                .toList();
        return RunPart.of(
                "Restrictions, holds and tags on the cell",
                "None hung on the cell from the slot to the last report.",
                List.of("Kind", "Since", "By", "Because", "Taken off"),
                rows);
    }

    private List<String> row(CellTag tag, Called called) {
        CellTag.Lifted lifted = tag.lifted();
        return List.of(
                tag.kind().words(),
                labTime.full(tag.placedAt()),
                called.name(tag.placedBy()),
                called.text(tag.reason()),
                lifted == null
                        ? "still hangs"
                        : labTime.full(lifted.at()) + " by " + called.name(lifted.by()) + ": "
                                + called.text(lifted.reason()));
    }

    private static Instant later(Instant one, @Nullable Instant other) {
        return other != null && other.isAfter(one) ? other : one;
    }

    private static boolean hungAt(CellTag tag, Instant start) {
        CellTag.Lifted lifted = tag.lifted();
        return lifted == null || !lifted.at().isBefore(start);
    }

    private RunPart questions(Run run, Called called) {
        Booking booking = bookings.find(run.booking()).orElseThrow();
        String cell = cells.find(run.cell()).map(Cell::name).orElse("");
        List<PersonId> people = run.people().stream().map(Run.Involved::person).toList();
        List<String> hashes = signed.sheets(run.booking()).stream()
                .flatMap(sheet -> sheet.signatures().stream())
                .map(Signature::statementSha256)
                .toList();
        List<String> beginnings = List.of(
                labTime.full(run.startedAt()) + ": " + cell + ",", labTime.full(booking.start()) + ": " + cell + ",");
        List<List<String>> rows = records.questionsAbout(people, beginnings, hashes).stream()
                .map(one -> {
                    OwnRecords.Answer answer = one.answer();
                    return List.of(
                            labTime.full(one.askedAt()),
                            called.name(one.askedBy()),
                            called.text(one.about()),
                            called.text(one.words()),
                            answer == null
                                    ? "no answer yet"
                                    : labTime.full(answer.at()) + " by " + called.name(answer.by()) + ": "
                                            + called.text(answer.words()));
                })
                .toList();
        return RunPart.of(
                "Questions to the record",
                "Nobody asked about a line of this run.",
                List.of("Asked", "By", "About", "Question", "Answer"),
                rows);
    }

    private RunPart entries(Run run, List<Incident> reported, Called called) {
        List<String> subjects =
                new ArrayList<>(List.of(run.booking().toString(), run.id().toString()));
        reported.forEach(one -> subjects.add(one.id().toString()));
        Map<Long, RecordedEntry> entries = new LinkedHashMap<>();
        subjects.forEach(subject ->
                trail.about(labs.theLab().id(), subject).forEach(entry -> entries.put(entry.sequence(), entry)));
        List<List<String>> rows = entries.values().stream()
                .sorted(Comparator.comparingLong(RecordedEntry::sequence))
                .map(entry -> List.of(
                        "" + entry.sequence(),
                        labTime.full(entry.at()),
                        entry.kind(),
                        called.text(entry.words()),
                        entry.hash().substring(0, 12)))
                .toList();
        return RunPart.of(
                "Entries of the lab’s record",
                "There is none.",
                List.of("Entry", "At", "Kind", "What", "Hash begins"),
                rows);
    }
}
