package org.standclear.program;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Service;
import org.standclear.core.difference.Change;
import org.standclear.core.difference.ProgramDifference;
import org.standclear.core.difference.ReadProgram;
import org.standclear.platform.ids.RevisionId;

/** Reads two revisions and compares them. Revisions never change, so those looked at last are kept ready. */
@Service
class ReadRevisionChanges implements RevisionChanges {

    /** Comparing is quick up to here, about four thousand steps; nobody reads the words of more. */
    static final int MOST_BYTES = 256 * 1024;

    /** More words than this help nobody. */
    static final int MOST_SAID = 40;

    private static final int KEPT = 300;

    private final Programs programs;
    private final ProgramReading reading;
    private final Phrasebooks phrasebooks;
    private final Map<Key, Since> kept = new LinkedHashMap<>(KEPT, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, Since> eldest) {
            return size() > KEPT;
        }
    };

    ReadRevisionChanges(Programs programs, ProgramReading reading, Phrasebooks phrasebooks) {
        this.programs = programs;
        this.reading = reading;
        this.phrasebooks = phrasebooks;
    }

    /** A revision, and the versions of the phrasebooks by which it may be read. */
    private record Key(RevisionId later, String books) {}

    @Override
    public Optional<Since> since(Revision later) {
        if (later.number() == 1) {
            return Optional.empty();
        }
        Optional<Since> gone = before(later).flatMap(before -> takenOut(before, later));
        if (gone.isPresent()) {
            return gone;
        }
        String books = phrasebooks.allCurrent().stream()
                .map(PhrasebookVersion::sha256)
                .distinct()
                .sorted()
                .collect(Collectors.joining(" "));
        Key key = new Key(later.id(), books);
        synchronized (kept) {
            Since known = kept.get(key);
            if (known != null) {
                return Optional.of(known);
            }
        }
        Optional<Since> found = before(later).map(before -> compare(before, later));
        found.ifPresent(since -> {
            synchronized (kept) {
                kept.put(key, since);
            }
        });
        return found;
    }

    private Optional<Revision> before(Revision later) {
        return programs.revisions(later.program()).stream()
                .filter(revision -> revision.number() == later.number() - 1)
                .findFirst();
    }

    /** Asked before what is kept ready: that a text was taken out must not wait for a restart. */
    private Optional<Since> takenOut(Revision before, Revision later) {
        return Stream.of(later, before)
                .filter(revision -> programs.isTakenOut(revision.id()))
                .findFirst()
                .map(gone -> new NotCompared(
                        before, "Revision " + gone.number() + ": text taken out at the end of its time."));
    }

    private Since compare(Revision before, Revision later) {
        if (before.sizeBytes() > MOST_BYTES || later.sizeBytes() > MOST_BYTES) {
            return new NotCompared(before, "The file is too long to be compared here.");
        }
        Optional<ReadProgram> old = read(before);
        Optional<ReadProgram> now = read(later);
        if (old.isEmpty() || now.isEmpty()) {
            int number = old.isEmpty() ? before.number() : later.number();
            return new NotCompared(
                    before, "Revision " + number + " can no longer be read: the phrasebook has changed since.");
        }
        List<Change> changes = ProgramDifference.between(old.get(), now.get());
        List<Said> said =
                changes.stream().limit(MOST_SAID).map(ReadRevisionChanges::said).toList();
        boolean sameFile = before.sha256().equals(later.sha256());
        boolean unread = !sameFile && (hasUnread(old.get()) || hasUnread(now.get()));
        return new Compared(before, said, changes.size() - said.size(), unread);
    }

    private Optional<ReadProgram> read(Revision revision) {
        return reading.understood(programs.bytes(revision.id()), revision.declaration());
    }

    private static boolean hasUnread(ReadProgram program) {
        return !program.plan().coverage().notUnderstood().isEmpty();
    }

    private static Said said(Change change) {
        Integer step = change.step();
        boolean gone = change instanceof Change.StepRemoved;
        return new Said(sentenceCase(change.words()), step == null || gone ? 0 : step);
    }

    private static String sentenceCase(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
