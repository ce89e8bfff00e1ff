package org.standclear.people;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;

/** Reads rosters from CSV files, shows what would change, changes it in one transaction, and takes it back. */
public interface RosterImports {

    /** The most lines a file may have. */
    int MOST_LINES = 50_000;

    /** Reads a file and keeps its rows for the preview; nobody is added yet. */
    Read read(byte[] file, String fileName, PersonId by);

    /**
     * Reads one file, an archive, or a set of files that belong together, and keeps the rows for the preview; nobody is
     * added yet.
     */
    Read read(List<SentFile> files, PersonId by);

    /** What the roster would change now, or has changed. */
    Optional<Preview> preview(UUID id);

    /**
     * Changes it, all or nothing; says why not, or nothing.
     *
     * @param fingerprint of the preview that was looked at; refused when it would change anything else by now
     */
    Optional<String> apply(UUID id, boolean takeOut, String fingerprint, PersonId by);

    /**
     * Takes it back: who was added is closed, who was taken out is back. An account that became more than a student's, or is in
     * another section by now, stays open. Says why not, or nothing.
     */
    Optional<String> undo(UUID id, PersonId by);

    /** What taking it back has changed, from the line after that number on; nothing of one that was not taken back. */
    List<Return> returns(UUID id, int afterNumber, int atMost);

    /** The latest rosters, latest first. */
    List<Preview> latest(int atMost);

    /** A file as it was sent. */
    record SentFile(String name, byte[] content) {}

    /** What came of reading. */
    sealed interface Read {

        /** It can be looked at. */
        record Kept(UUID id) implements Read {}

        /** It cannot be used; a sentence each, with the line where there is one. */
        record Refused(List<String> says) implements Read {}
    }

    /** Where a roster is. */
    enum State {
        READ,
        APPLIED,
        UNDONE
    }

    /**
     * A roster and what it changes.
     *
     * @param added people who get an account
     * @param enrolled enrolments that are new
     * @param takenOut enrolments in the file's courses that the file does not name, by section
     * @param notes what is different and stays as it is; of an applied roster, what taking it back leaves
     * @param fingerprint of everything that applying would change; empty when it was applied already
     * @param changed what applying it, or taking it back, has changed, a sentence each
     */
    record Preview(
            UUID id,
            String fileName,
            State state,
            PersonId readBy,
            Instant readAt,
            @Nullable PersonId decidedBy,
            @Nullable Instant decidedAt,
            int lines,
            List<String> added,
            List<String> enrolled,
            List<Gone> takenOut,
            List<String> notes,
            String fingerprint,
            List<String> changed) {}

    /**
     * People of one section whom the file does not name.
     *
     * @param wholeSection whether the file names nobody of it
     * @param bookingsAhead how many bookings they have ahead
     */
    record Gone(String section, boolean wholeSection, List<String> people, int bookingsAhead) {}

    /**
     * One line of what taking a roster back changed.
     *
     * @param number counts from 1, by kind, section and name
     * @param section its code with the course's; empty for an account
     * @param toldBookings how many bookings the person had ahead, and was told that they stay; 0 for nobody to tell
     */
    record Return(int number, Kind kind, String person, String section, int toldBookings) {

        /** What happened to the person, in the order of the list. */
        public enum Kind {
            BACK,
            ENDED,
            CLOSED
        }
    }
}
