package org.standclear.signoff.rules;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.cell.Cell;
import org.standclear.cell.CellState;
import org.standclear.check.BenchFacts;
import org.standclear.check.StoredAnswer;
import org.standclear.people.Person;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ProgramId;
import org.standclear.platform.ids.ReleaseId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.security.Role;
import org.standclear.program.Revision;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;

/** A cell with a booking on it, for the tests of the rules. */
final class Bench {

    static final Instant START = Instant.parse("2026-03-11T13:07:00Z");
    static final Instant END = START.plusSeconds(30 * 60);
    static final Instant NOW = START.plusSeconds(120);

    static final Person NOOR = person("Noor Candlewick", Role.STUDENT);
    static final Person MATEO = person("Mateo Ironbark", Role.STUDENT);
    static final Person ADAEZE = person("Adaeze Lanternby", Role.TECHNICIAN);
    static final Person HEMI = person("Hemi Coppergate", Role.TECHNICIAN);

    static final CellId AVOCET = CellId.next();
    static final ProgramId PROGRAM = ProgramId.next();
    static final Revision REVISION = revision(1, "peg and plate", "");

    static final BenchFacts FACTS =
            new BenchFacts("reduced", 50.0, 50, "G-02", 0.06, 0.48, "5", 125.0, 913.4, 12.3, List.of(), 250.0, 1.0);

    private Bench() {}

    static Person person(String name, Role role) {
        return new Person(PersonId.next(), name.toLowerCase().replace(' ', '.'), name, Set.of(role), true);
    }

    static Revision revision(int number, String file, String declaration) {
        return new Revision(
                RevisionId.next(),
                PROGRAM,
                number,
                "Peg and plate",
                "peg.yaml",
                NOOR.id(),
                START.minusSeconds(86400L * (10 - number)),
                Sha256.of(file),
                file.length(),
                declaration,
                Sha256.of(declaration));
    }

    static Cell cell(CellState state, int version) {
        return new Cell(
                AVOCET, LabId.next(), "Avocet", state, state == CellState.IN_SERVICE ? "" : "cable chafe", version, 0);
    }

    static Booking booking(@Nullable PersonId attendant, @Nullable RevisionId revision) {
        return new Booking(
                BookingId.next(),
                AVOCET,
                START,
                END,
                NOOR.id(),
                attendant,
                null,
                null,
                revision,
                BookingState.READY,
                START,
                3);
    }

    static StoredAnswer answer(StoredAnswer.Verdict verdict, int version) {
        String json = "{\"findings\":[{\"check\":\"override\",\"outcome\":\"within\",\"says\":\"fine\"},"
                + "{\"check\":\"payload\",\"outcome\":\"not-checkable\",\"says\":\"The part's mass is missing.\"},"
                + "{\"check\":\"tool-speed\",\"outcome\":\"outside\",\"says\":\"The tool point reaches 312 mm/s of 250.\"}]}";
        return new StoredAnswer(AnswerId.next(), REVISION.id(), AVOCET, version, verdict, "1", json, FACTS, START);
    }

    static Release release() {
        return new Release(
                ReleaseId.next(),
                BookingId.next(),
                UUID.randomUUID(),
                AVOCET,
                7,
                REVISION.id(),
                REVISION.sha256(),
                REVISION.declarationSha256(),
                "G-02",
                0.48,
                NOOR.id(),
                MATEO.id(),
                ADAEZE.id(),
                "K74M",
                true,
                5,
                NOW,
                NOW.plusSeconds(600),
                END,
                null,
                null,
                null);
    }

    static Expected expected() {
        return new Expected(
                REVISION.fingerprintEnd(),
                FACTS,
                "G-02",
                "level 3",
                Map.of(Part.OPERATOR, NOOR.printedName(), Part.ATTENDANT, MATEO.printedName()));
    }
}
