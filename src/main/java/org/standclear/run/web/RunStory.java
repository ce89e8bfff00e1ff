package org.standclear.run.web;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cells;
import org.standclear.check.ProgramChecks;
import org.standclear.check.StoredAnswer;
import org.standclear.people.People;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.run.Run;
import org.standclear.run.RunEvent;
import org.standclear.run.Runs;
import org.standclear.run.web.RunView.Fact;
import org.standclear.signoff.Disagreement;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.signoff.Releases;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffRecord;
import org.standclear.trail.TrailReader;

/** Puts everything about one run together. */
@Component
class RunStory {

    private final Runs runs;
    private final Bookings bookings;
    private final Cells cells;
    private final Programs programs;
    private final ProgramChecks checks;
    private final SignoffRecord record;
    private final Releases releases;
    private final RunSheets sheets;
    private final TrailReader trail;
    private final Labs labs;
    private final People people;
    private final LabTime labTime;

    RunStory(
            Runs runs,
            Bookings bookings,
            Cells cells,
            Programs programs,
            ProgramChecks checks,
            SignoffRecord record,
            Releases releases,
            RunSheets sheets,
            TrailReader trail,
            Labs labs,
            People people,
            LabTime labTime) {
        this.runs = runs;
        this.bookings = bookings;
        this.cells = cells;
        this.programs = programs;
        this.checks = checks;
        this.record = record;
        this.releases = releases;
        this.sheets = sheets;
        this.trail = trail;
        this.labs = labs;
        this.people = people;
        this.labTime = labTime;
    }

    @Transactional(readOnly = true)
    RunView of(Run run, SignedInPerson me) {
        Booking booking = bookings.find(run.booking()).orElseThrow();
        Revision revision = programs.find(run.revision()).orElseThrow();
        List<Sheet> signed = record.sheets(booking.id());
        StoredAnswer answer = answer(signed, run);
        String cell = cellName(run.cell());
        return new RunView(
                run.id().toString(),
                headline(run, cell),
                labTime.day(run.startedAt()) + ", slot " + labTime.span(booking.start(), booking.end()),
                StateMarks.of(run.state()),
                run.state().words(),
                facts(run, cell),
                program(revision),
                me.isLabStaff() || revision.author().equals(me.id()) ? "/programs/" + revision.program() : "",
                "/checks/" + answer.id(),
                verdict(answer),
                sheets.columns(signed, revision, answer, new FoundFacts(checks.details(answer.id()))),
                sheets.views(signed),
                disagreements(booking),
                releaseViews(booking),
                lapses(booking),
                events(booking),
                entries(booking),
                run.involves(me.id()) || me.isLabStaff());
    }

    /** The answer that the latest bench list rested on. */
    private StoredAnswer answer(List<Sheet> signed, Run run) {
        AnswerId id = signed.stream()
                .filter(sheet -> sheet.revision().equals(run.revision()) && sheet.cellVersion() == run.cellVersion())
                .map(Sheet::answer)
                .reduce((one, later) -> later)
                .orElseThrow();
        return checks.find(id).orElseThrow();
    }

    private String headline(Run run, String cell) {
        String who = names(run.inPart(Part.OPERATOR));
        String passes = run.passes() + (run.passes() == 1 ? " pass" : " passes");
        String stops = run.stops() == 0 ? "no stop" : run.stops() == 1 ? "1 stop" : run.stops() + " stops";
        return who + " on " + cell + ": " + run.state().words() + ", " + passes + ", " + stops;
    }

    private List<Fact> facts(Run run, String cell) {
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Operator", names(run.inPart(Part.OPERATOR))));
        facts.add(new Fact("E-stop attendant", names(run.inPart(Part.ATTENDANT))));
        facts.add(new Fact("Released by", names(run.inPart(Part.RELEASER))));
        facts.add(new Fact("Cell", cell + " version " + run.cellVersion()));
        facts.add(new Fact("Started", RunView.instant(labTime, run.startedAt())));
        facts.add(new Fact("Ended", words(run.endedAt())));
        facts.add(new Fact("Closed out", words(run.closedOutAt())));
        return facts;
    }

    private String words(@Nullable Instant at) {
        return at == null ? "not yet" : RunView.instant(labTime, at);
    }

    private List<Fact> program(Revision revision) {
        return List.of(
                new Fact("Program", revision.title() + ", revision " + revision.number()),
                new Fact("Author", people.printedName(revision.author())),
                new Fact("File", revision.fileName()),
                new Fact("SHA-256", revision.sha256()),
                new Fact(
                        "Declaration",
                        revision.declaration() == null ? "in the program file" : revision.declarationSha256()));
    }

    private static String verdict(StoredAnswer answer) {
        String words = answer.verdict().words();
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + " on version "
                + answer.cellVersion();
    }

    private List<RunView.Differs> disagreements(Booking booking) {
        return record.disagreements(booking.id()).stream().map(this::differs).toList();
    }

    private RunView.Differs differs(Disagreement one) {
        return new RunView.Differs(
                RunView.instant(labTime, one.at()),
                one.part().words(),
                "Item " + one.item() + " of the " + one.list().words(),
                one.expected(),
                one.read());
    }

    private List<RunView.ReleaseView> releaseViews(Booking booking) {
        List<Release> all = new ArrayList<>(releases.of(booking.id()));
        Collections.reverse(all);
        return all.stream()
                .map(release -> new RunView.ReleaseView(
                        release.code(),
                        RunView.instant(labTime, release.issuedAt()),
                        labTime.time(release.startBy()),
                        people.printedName(release.releaser()) + (release.firstRun() ? ", watches the first run" : ""),
                        became(release)))
                .toList();
    }

    private String became(Release release) {
        Instant used = release.usedAt();
        Release.Lapsed lapsed = release.lapsed();
        String start = used == null ? "" : "started " + labTime.seconds(used);
        String end = lapsed == null
                ? ""
                : "lapsed " + labTime.seconds(lapsed.at()) + ", "
                        + lapsed.rule().words() + ": " + lapsed.because();
        String both = start.isEmpty() || end.isEmpty() ? start + end : start + "; " + end;
        return both.isEmpty() ? "waits for its start" : both;
    }

    private List<RunView.LapseView> lapses(Booking booking) {
        return record.lapses(booking.id()).stream()
                .map(lapse ->
                        new RunView.LapseView(RunView.instant(labTime, lapse.at()), lapse.what(), lapse.because()))
                .toList();
    }

    private List<RunView.EventView> events(Booking booking) {
        return runs.events(booking.id()).stream().map(this::view).toList();
    }

    private RunView.EventView view(RunEvent event) {
        String answer = switch (event.kind()) {
            case STARTED -> " under release " + event.answer();
            case PASS -> ": " + event.answer();
            case FINISHED -> " after " + event.answer() + ("1".equals(event.answer()) ? " pass" : " passes");
            default -> "";
        };
        return new RunView.EventView(
                event.id().toString(),
                labTime.seconds(event.at()),
                labTime.iso(event.at()),
                event.kind().words() + answer,
                event.words().equalsIgnoreCase(event.kind().words() + ".") ? "" : event.words(),
                people.printedName(event.account()),
                event.kind() == RunEvent.Kind.CORRECTION,
                event.kind().isStop());
    }

    private List<RunView.EntryView> entries(Booking booking) {
        return trail.about(labs.theLab().id(), booking.id().toString()).stream()
                .map(entry -> new RunView.EntryView(
                        entry.sequence(),
                        RunView.instant(labTime, entry.at()),
                        entry.words(),
                        entry.hash().substring(0, 12)))
                .toList();
    }

    private String names(List<PersonId> ids) {
        return ids.stream().map(people::printedName).collect(Collectors.joining(", then "));
    }

    String cellName(CellId id) {
        return cells.find(id).map(cell -> cell.name()).orElse("unknown cell");
    }
}
