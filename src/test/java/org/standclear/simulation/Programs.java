package org.standclear.simulation;

import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.Booking;
import org.standclear.people.Person;
import org.standclear.program.ProgramUploads.Outcome;
import org.standclear.program.ProgramUploads.UploadProgram;
import org.standclear.program.ProgramUploads.Uploaded;
import org.standclear.program.Revision;
import org.standclear.program.SampleProgram;

/** Students write programs, change them, and put them on their bookings. */
final class Programs {

    private final Lab lab;

    Programs(Lab lab) {
        this.lab = lab;
    }

    /** Mostly within limits; now and then too fast, or with a line that nobody reads, which a waiver may set aside. */
    String attach(Booking booking) {
        Person author = lab.cast.find(booking.operator());
        boolean tooFast = lab.chance.percent(10);
        boolean unread = !tooFast && lab.chance.percent(18);
        Revision revision = unread ? withUnreadLine(author) : upload(author, null, tooFast ? "60" : "50");
        return revision == null ? "not kept" : attach(booking, revision);
    }

    /** One byte more, or another declaration: the next revision of what is on the booking. */
    String change(Booking booking) {
        Revision before = lab.latest.get(booking.id());
        if (before == null) {
            return "nothing to change";
        }
        Revision next = upload(lab.cast.find(booking.operator()), before, "50");
        if (next == null) {
            return "not kept";
        }
        lab.latest.put(booking.id(), next);
        return lab.chance.percent(50) ? attach(booking, next) : "uploaded, not attached";
    }

    /** Blocks, one of which the reader does not know. */
    private @Nullable Revision withUnreadLine(Person author) {
        String blocks = SampleProgram.blocksWithUnreadLine()
                .replace("N10 ", "N10 (peg " + lab.chance.between(1, 99_999) + ") ");
        return upload(author, null, "50", "peg.txt", blocks);
    }

    private @Nullable Revision upload(Person author, @Nullable Revision before, String override) {
        String sheet = SampleProgram.sheet("Peg and plate " + lab.chance.between(1, 99_999))
                .replace("override-percent: 50", "override-percent: " + override);
        return upload(author, before, override, "peg.yaml", sheet);
    }

    private @Nullable Revision upload(
            Person author, @Nullable Revision before, String override, String name, String text) {
        Outcome outcome = lab.doors
                .uploads()
                .upload(new UploadProgram(
                        author.id(),
                        before == null ? null : before.program(),
                        null,
                        name,
                        text.getBytes(StandardCharsets.UTF_8),
                        null));
        if (outcome instanceof Uploaded uploaded) {
            lab.overrides.put(uploaded.revision().id(), override);
            return uploaded.revision();
        }
        return null;
    }

    private String attach(Booking booking, Revision revision) {
        lab.latest.put(booking.id(), revision);
        return Lab.word(lab.doors.preparation().attach(booking.id(), revision.id(), booking.operator()));
    }
}
