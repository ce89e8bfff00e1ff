package org.standclear.program;

import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ProgramId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Reads first and keeps afterwards, all in one transaction under the program's row lock. */
@Service
class JdbcProgramUploads implements ProgramUploads {

    private static final int LONGEST_TITLE = 120;
    private static final int LONGEST_FILE_NAME = 200;

    private final RevisionRows rows;
    private final Programs programs;
    private final ProgramReading reading;
    private final Labs labs;
    private final Trail trail;
    private final Clock clock;

    JdbcProgramUploads(
            RevisionRows rows, Programs programs, ProgramReading reading, Labs labs, Trail trail, Clock clock) {
        this.rows = rows;
        this.programs = programs;
        this.reading = reading;
        this.labs = labs;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional
    public Outcome upload(UploadProgram upload) {
        if (upload.bytes().length > MAX_BYTES) {
            return new Refused("file", "The file has " + upload.bytes().length + " bytes; 8 MiB is the most.");
        }
        if (upload.bytes().length == 0) {
            return new Refused("file", "The file is empty. Choose a program file, or paste the program.");
        }
        ProgramReading.Outcome read = reading.read(upload.bytes(), upload.declaration());
        if (read instanceof ProgramReading.Unreadable unreadable) {
            return new Refused(unreadable.field(), unreadable.says());
        }
        return keep(upload, (ProgramReading.Readable) read);
    }

    private Outcome keep(UploadProgram upload, ProgramReading.Readable read) {
        ProgramId program = upload.program();
        if (program == null) {
            Revision first = revision(upload, read, ProgramId.next(), 1);
            rows.addProgram(labs.theLab().id(), first);
            return add(first, rows.addContent(Id.newValue(), first.sha256(), upload.bytes()));
        }
        Optional<PersonId> author = rows.lockAuthor(program);
        if (author.filter(upload.author()::equals).isEmpty()) {
            return new Refused("program", "No such program, or it is not yours.");
        }
        Revision latest = programs.revisions(program).get(0);
        Revision next = revision(upload, read, program, latest.number() + 1);
        boolean stands = same(latest, next) && !programs.isTakenOut(latest.id());
        return stands ? new Uploaded(latest, true) : next(upload, latest, next);
    }

    private Outcome next(UploadProgram upload, Revision latest, Revision next) {
        UUID content = latest.sha256().equals(next.sha256()) && !programs.isTakenOut(latest.id())
                ? rows.contentOf(latest.id())
                : rows.addContent(Id.newValue(), next.sha256(), upload.bytes());
        rows.touchProgram(next);
        return add(next, content);
    }

    private Outcome add(Revision revision, UUID content) {
        rows.addRevision(revision, content);
        LabId lab = labs.theLab().id();
        String words = "Revision " + revision.number() + " of \"" + revision.title() + "\" was uploaded";
        trail.append(TrailEntry.of(lab, "program.uploaded", revision.id(), revision.author(), words)
                .with("program", revision.program())
                .with("revision", revision.number())
                .with("sha256", revision.sha256())
                .with("declaration-sha256", revision.declarationSha256()));
        return new Uploaded(revision, false);
    }

    private static boolean same(Revision one, Revision other) {
        return one.sha256().equals(other.sha256()) && one.declarationSha256().equals(other.declarationSha256());
    }

    private Revision revision(UploadProgram upload, ProgramReading.Readable read, ProgramId program, int number) {
        Instant now = SqlTime.stored(clock.instant());
        String declaration = read.declaration();
        String fileName = PlainText.mended(upload.fileName(), LONGEST_FILE_NAME);
        return new Revision(
                RevisionId.next(),
                program,
                number,
                title(upload.title(), read.title(), fileName),
                fileName,
                upload.author(),
                now,
                Sha256.of(upload.bytes()),
                upload.bytes().length,
                declaration,
                Sha256.of(declaration == null ? "" : declaration));
    }

    /** The first that says something. Names come from people's machines and files, so they are mended, not refused. */
    private static String title(@Nullable String title, @Nullable String inFile, String fileName) {
        for (@Nullable String text : new @Nullable String[] {title, inFile, fileName}) {
            String mended = PlainText.mended(text, LONGEST_TITLE);
            if (!mended.isBlank()) {
                return mended;
            }
        }
        return "Program without a title";
    }
}
