package org.standclear.incident.records;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.cell.Cell;
import org.standclear.cell.CellVersion;
import org.standclear.cell.Cells;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.run.Run;
import org.standclear.run.RunEvent;
import org.standclear.run.Runs;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.signoff.Releases;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.Signature;
import org.standclear.signoff.SignoffList;
import org.standclear.signoff.SignoffRecord;
import org.standclear.trail.RecordedEntry;
import org.standclear.trail.TrailReader;

/**
 * Lists the evidence of a run: every piece with the hash of its content, taken from the content itself and not from a hash
 * that is stored beside it, but for texts of programs that were taken out at the end of their time.
 */
@Component
class EvidencePieces {

    private static final String CELL_VERSION = "cell version";
    private static final String PROGRAM = "program";
    private static final String DECLARATION = "declaration";

    private final Programs programs;
    private final Cells cells;
    private final Releases releases;
    private final SignoffRecord signed;
    private final Runs runs;
    private final TrailReader trail;
    private final Labs labs;
    private final LabTime labTime;

    EvidencePieces(
            Programs programs,
            Cells cells,
            Releases releases,
            SignoffRecord signed,
            Runs runs,
            TrailReader trail,
            Labs labs,
            LabTime labTime) {
        this.programs = programs;
        this.cells = cells;
        this.releases = releases;
        this.signed = signed;
        this.runs = runs;
        this.trail = trail;
        this.labs = labs;
        this.labTime = labTime;
    }

    /** A piece as it is now. */
    record Found(String kind, String reference, String words, String sha256) {

        String line() {
            return kind + '\t' + reference + '\t' + words + '\t' + sha256 + '\n';
        }
    }

    /** Everything about the run; of the cell alone when there was no run. */
    List<Found> now(CellId cell, @Nullable Run run) {
        List<Found> found = new ArrayList<>();
        int version = run == null ? cells.find(cell).map(Cell::currentVersion).orElse(0) : run.cellVersion();
        cells.version(cell, version).map(EvidencePieces::of).ifPresent(found::add);
        if (run != null) {
            programs.find(run.revision()).ifPresent(revision -> of(revision, found));
            BookingId booking = run.booking();
            releases.of(booking).forEach(release -> found.add(of(release, release.attendant())));
            signed.sheets(booking).forEach(sheet -> of(sheet, found));
            runs.events(booking).forEach(event -> found.add(of(event)));
            trail.about(labs.theLab().id(), booking.toString()).forEach(entry -> found.add(of(entry)));
        }
        return found;
    }

    /**
     * A piece that is no longer what the run is about, looked up by its own name: a run that was started again has another
     * version or revision.
     */
    Optional<Found> again(CellId cell, Found frozen) {
        return switch (frozen.kind()) {
            case CELL_VERSION ->
                cells.version(cell, Integer.parseInt(frozen.reference())).map(EvidencePieces::of);
            case PROGRAM, DECLARATION -> {
                List<Found> found = new ArrayList<>();
                programs.find(RevisionId.of(frozen.reference())).ifPresent(revision -> of(revision, found));
                yield found.stream()
                        .filter(one -> one.kind().equals(frozen.kind()))
                        .findFirst();
            }
            default -> Optional.empty();
        };
    }

    private static Found of(CellVersion version) {
        return new Found(
                CELL_VERSION,
                String.valueOf(version.number()),
                "cell description, version " + version.number() + ", tool " + version.fittedTool(),
                Sha256.of(version.file()));
    }

    private void of(Revision revision, List<Found> found) {
        RevisionId id = revision.id();
        String words = "program file, revision " + revision.number();
        found.add(programs.takenOutAt(id)
                // a note stands in place of the bytes: only the hash that was stored beside them speaks of the program
                .map(at -> new Found(
                        PROGRAM, id.toString(), words + ", text taken out on " + labTime.date(at), revision.sha256()))
                .orElseGet(() -> new Found(PROGRAM, id.toString(), words, Sha256.of(programs.bytes(id)))));
        String declaration = revision.declaration();
        found.add(new Found(
                DECLARATION,
                id.toString(),
                declaration == null ? "no declaration beside the file" : "declaration beside the file",
                Sha256.of(declaration == null ? "" : declaration)));
    }

    /**
     * The run's releases with each person who signed for their e-stop: it changes hands while a release holds, and what was
     * frozen names who had it then. Not a release whose attendant of now never signed: no handover came to that.
     */
    List<Found> handedOver(Run run) {
        Set<PersonId> attendants = new LinkedHashSet<>();
        for (Sheet sheet : signed.sheets(run.booking())) {
            if (sheet.list() != SignoffList.SESSION) {
                sheet.signedBy(Part.ATTENDANT).filter(Signature::agreed).ifPresent(one -> attendants.add(one.signer()));
            }
        }
        return releases.of(run.booking()).stream()
                .filter(release -> attendants.contains(release.attendant()))
                .flatMap(release -> attendants.stream().map(attendant -> of(release, attendant)))
                .toList();
    }

    private static Found of(Release release, PersonId attendant) {
        return new Found(
                "release",
                release.id().toString(),
                "release " + release.code(),
                Sha256.of(String.join(
                        "\n",
                        release.sheet().toString(),
                        release.cell() + " " + release.cellVersion(),
                        release.revision().toString(),
                        release.programSha256(),
                        release.declarationSha256(),
                        release.tool() + " " + release.payloadKg(),
                        release.operator() + " " + attendant + " " + release.releaser(),
                        release.code() + " " + release.firstRun() + " " + release.passLimit(),
                        release.issuedAt() + " " + release.startBy() + " " + release.windowEnd())));
    }

    private static void of(Sheet sheet, List<Found> found) {
        for (Signature signature : sheet.signatures()) {
            found.add(new Found(
                    "signature",
                    signature.id().toString(),
                    sheet.list().words() + ", " + signature.part().words(),
                    Sha256.of(String.join(
                            "\n",
                            signature.signer() + " " + signature.printedName(),
                            signature.at() + " " + signature.method(),
                            signature.meaning(),
                            signature.statement(),
                            signature.statementSha256()))));
        }
    }

    private static Found of(RunEvent event) {
        return new Found(
                "log entry",
                event.id().toString(),
                event.kind().words(),
                Sha256.of(String.join(
                        "\n",
                        event.kind() + " " + event.item(),
                        event.answer(),
                        event.words(),
                        event.account() + " " + event.at(),
                        Optional.ofNullable(event.corrects())
                                .map(UUID::toString)
                                .orElse(""))));
    }

    private static Found of(RecordedEntry entry) {
        return new Found(
                "record entry",
                String.valueOf(entry.sequence()),
                entry.kind(),
                Sha256.of(String.join(
                        "\n",
                        entry.kind(),
                        entry.at() + " " + entry.actor(),
                        entry.words(),
                        entry.factsText(),
                        entry.previousHash(),
                        entry.hash())));
    }
}
