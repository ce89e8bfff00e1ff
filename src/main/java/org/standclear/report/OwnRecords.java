package org.standclear.report;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RunId;

/** What the lab keeps about a person, for that person; they may question any line of it. */
public interface OwnRecords {

    /** The person's own lines, latest first in each part; the latest few hundred of each. */
    List<Section> of(PersonId person);

    /** All of the person's own lines, for a file to take away. */
    List<Section> whole(PersonId person);

    /** The person's questions, latest first. */
    List<Question> questionsOf(PersonId person);

    /** All questions, those without an answer first, oldest first among them. */
    List<Question> questions();

    /** Questions of these people about one run: about a line that begins so, or that has one of these hashes in it. */
    List<Question> questionsAbout(
            Collection<PersonId> people, Collection<String> beginnings, Collection<String> hashes);

    /** Asks about a line; the line stays as it is, and an instructor answers. */
    Outcome ask(PersonId by, String about, String words);

    /** Answers a question; never one's own, and once. */
    Outcome answer(UUID question, String words, PersonId by);

    /** Writes down that somebody printed a run's paper with names on it. */
    void printed(RunId run, PersonId by);

    /** A part of the record. */
    record Section(String title, List<Entry> entries) {

        public Section {
            entries = List.copyOf(entries);
        }

        /** The entries as they are shown, and as they can be asked about. */
        public List<String> lines() {
            return entries.stream().map(Entry::line).toList();
        }
    }

    /**
     * One thing that is kept.
     *
     * @param lab where it happened; who works in several is told in the words when that is another one
     * @param shown the instant in that lab's zone, for people
     */
    record Entry(Instant at, LabId lab, String shown, String words) {

        /** Both in one line. */
        public String line() {
            return shown + ": " + words;
        }
    }

    /** A question; without an answer until an instructor gave one. */
    record Question(
            UUID id,
            PersonId askedBy,
            String about,
            String words,
            Instant askedAt,
            @Nullable Answer answer) {}

    /** Who answered what. */
    record Answer(String words, PersonId by, Instant at) {}

    /** What came of it. */
    sealed interface Outcome {

        /** It is kept. */
        record Kept() implements Outcome {}

        /** It is not; says why, and with which field. */
        record Refused(String field, String says) implements Outcome {}
    }
}
