package org.standclear.report.web;

import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.standclear.cell.Cells;
import org.standclear.people.People;
import org.standclear.platform.time.LabTime;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.report.web.RunPaper.EventLine;
import org.standclear.report.web.RunPaper.ReleaseLine;
import org.standclear.report.web.RunPaper.SignatureLine;
import org.standclear.report.web.TermView.Fact;
import org.standclear.run.Run;
import org.standclear.run.Runs;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.signoff.Releases;
import org.standclear.signoff.SignoffRecord;

/** Puts the paper of a run together; without names, people are told apart by numbers and free text is left out. */
@Component
class RunPapers {

    private final Runs runs;
    private final SignoffRecord signed;
    private final Releases releases;
    private final Programs programs;
    private final Cells cells;
    private final People people;
    private final RunBefore beforeParts;
    private final RunAfter afterParts;
    private final LabTime labTime;

    RunPapers(
            Runs runs,
            SignoffRecord signed,
            Releases releases,
            Programs programs,
            Cells cells,
            People people,
            RunBefore beforeParts,
            RunAfter afterParts,
            LabTime labTime) {
        this.runs = runs;
        this.signed = signed;
        this.releases = releases;
        this.programs = programs;
        this.cells = cells;
        this.people = people;
        this.beforeParts = beforeParts;
        this.afterParts = afterParts;
        this.labTime = labTime;
    }

    /**
     * The paper of a run.
     *
     * @param whole whether the parts that only staff and the safety reviewer read are on it
     */
    RunPaper of(Run run, boolean withNames, boolean whole) {
        Called called = new Called(people, withNames);
        String cell = cells.find(run.cell()).map(one -> one.name()).orElse("unknown cell");
        return new RunPaper(
                run.id().toString(),
                cell + " version " + run.cellVersion() + ", " + run.state().words(),
                "Run of " + labTime.full(run.startedAt()),
                withNames,
                labTime.full(labTime.now()),
                facts(run, called),
                beforeParts.of(run, called),
                whole ? afterParts.of(run, called) : List.of(),
                releases.of(run.booking()).stream()
                        .map(one -> line(one, called))
                        .toList(),
                signatures(run, called),
                runs.events(run.booking()).stream()
                        .map(event -> new EventLine(
                                labTime.seconds(event.at()),
                                event.kind().words(),
                                called.name(event.account()),
                                called.text(event.words())))
                        .toList(),
                signed.lapses(run.booking()).stream()
                        .map(lapse -> new EventLine(
                                labTime.seconds(lapse.at()), lapse.what(), lapse.code(), called.text(lapse.because())))
                        .toList(),
                signed.disagreements(run.booking()).stream()
                        .map(one -> new EventLine(
                                labTime.seconds(one.at()),
                                one.list().words() + ", item " + one.item(),
                                one.part().words(),
                                called.text(one.says())))
                        .toList());
    }

    private List<Fact> facts(Run run, Called called) {
        Revision revision = programs.find(run.revision()).orElseThrow();
        return List.of(
                new Fact("Operator", names(run, Part.OPERATOR, called)),
                new Fact("E-stop attendant", names(run, Part.ATTENDANT, called)),
                new Fact("Releaser", names(run, Part.RELEASER, called)),
                new Fact("Program", called.text(revision.title()) + ", revision " + revision.number()),
                new Fact("File SHA-256", revision.sha256()),
                new Fact("Declaration SHA-256", revision.declarationSha256()),
                new Fact("Started", labTime.full(run.startedAt())),
                new Fact(
                        "Ended",
                        run.endedAt() == null ? "not yet" : labTime.full(Objects.requireNonNull(run.endedAt()))),
                new Fact(
                        "Closed out",
                        run.closedOutAt() == null
                                ? "not yet"
                                : labTime.full(Objects.requireNonNull(run.closedOutAt()))),
                new Fact("Passes, stops", run.passes() + ", " + run.stops()));
    }

    private static String names(Run run, Part part, Called called) {
        return run.inPart(part).stream().map(called::name).collect(Collectors.joining(", "));
    }

    private ReleaseLine line(Release release, Called called) {
        Release.Lapsed lapsed = release.lapsed();
        String used = release.usedAt() == null ? "not started" : "started " + labTime.seconds(release.usedAt());
        return new ReleaseLine(
                release.code(),
                labTime.seconds(release.issuedAt()),
                called.name(release.releaser()),
                labTime.time(release.startBy()),
                lapsed == null
                        ? used
                        : used + ", lapsed " + labTime.seconds(lapsed.at()) + ", "
                                + lapsed.rule().words());
    }

    private List<SignatureLine> signatures(Run run, Called called) {
        return signed.sheets(run.booking()).stream()
                .flatMap(sheet -> sheet.signatures().stream()
                        .map(one -> new SignatureLine(
                                sheet.list().words() + ", round " + sheet.round(),
                                one.part().words(),
                                called.withNames() ? one.printedName() : called.name(one.signer()),
                                labTime.seconds(one.at()),
                                one.method().words(),
                                called.text(one.statement()),
                                one.statementSha256())))
                .toList();
    }
}
