package org.standclear.people.roster;

import java.io.ByteArrayOutputStream;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.RosterImports;
import org.standclear.people.StandingBookings;
import org.standclear.people.roster.Differences.Enrolled;
import org.standclear.people.roster.Differences.Found;
import org.standclear.people.roster.RosterRows.Effect;
import org.standclear.people.roster.RosterRows.Stored;
import org.standclear.people.roster.RosterUndo.TakenBack;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Rosters in the database. */
@Service
@Transactional
class JdbcRosterImports implements RosterImports {

    private static final int COURSES_SHOWN = 12;

    private final RosterRows rows;
    private final Differences differences;
    private final RosterChanges changes;
    private final RosterUndo undo;
    private final RosterDone done;
    private final RosterReturns returns;
    private final StandingBookings standing;
    private final Trail trail;
    private final Labs labs;
    private final Clock clock;

    JdbcRosterImports(
            RosterRows rows,
            Differences differences,
            RosterChanges changes,
            RosterUndo undo,
            RosterDone done,
            RosterReturns returns,
            StandingBookings standing,
            Trail trail,
            Labs labs,
            Clock clock) {
        this.rows = rows;
        this.differences = differences;
        this.changes = changes;
        this.undo = undo;
        this.done = done;
        this.returns = returns;
        this.standing = standing;
        this.trail = trail;
        this.labs = labs;
        this.clock = clock;
    }

    @Override
    public Read read(byte[] file, String fileName, PersonId by) {
        return read(List.of(new SentFile(fileName, file)), by);
    }

    @Override
    public Read read(List<SentFile> sent, PersonId by) {
        List<RosterRow> read;
        try {
            Map<String, byte[]> files = unpacked(sent);
            boolean set = files.size() > 1 && RosterSet.isOne(files.keySet());
            if (!set && files.size() > 1) {
                return new Read.Refused(
                        List.of("Send one roster, or the set of users.csv, classes.csv, courses.csv and "
                                + "enrollments.csv, as files or as one zip archive."));
            }
            RosterSet joined = set ? RosterSet.of(files) : null;
            RosterFile single = set
                    ? null
                    : RosterFile.of(RosterText.of(files.values().iterator().next()));
            List<String> problems = joined != null
                    ? joined.problems()
                    : Objects.requireNonNull(single).problems();
            if (!problems.isEmpty()) {
                return new Read.Refused(problems);
            }
            read = joined != null
                    ? joined.rows()
                    : Objects.requireNonNull(single).rows();
        } catch (RosterException unreadable) {
            return new Read.Refused(List.of(String.valueOf(unreadable.getMessage())));
        }
        return kept(read, sent, by);
    }

    /** By name in small letters; one archive is as good as the files in it. */
    private static Map<String, byte[]> unpacked(List<SentFile> sent) {
        if (sent.size() == 1 && RosterArchive.isOne(sent.get(0).content())) {
            return RosterArchive.files(sent.get(0).content());
        }
        Map<String, byte[]> files = new LinkedHashMap<>();
        for (SentFile one : sent) {
            if (RosterArchive.isOne(one.content())) {
                throw new RosterException("Send an archive by itself, without other files.");
            }
            if (files.put(one.name().toLowerCase(Locale.ROOT), one.content()) != null) {
                throw new RosterException("Two files are named " + one.name() + ".");
            }
        }
        return files;
    }

    private Read kept(List<RosterRow> read, List<SentFile> sent, PersonId by) {
        Found found = differences.of(read);
        if (!found.unknownCourses().isEmpty()) {
            return new Read.Refused(List.of(unknown(List.copyOf(found.unknownCourses()))));
        }
        UUID id = Id.newValue();
        String name = sent.stream().map(SentFile::name).collect(Collectors.joining(", "));
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        sent.forEach(one -> all.writeBytes(one.content()));
        rows.insert(
                labs.theLab().id().value(),
                id,
                PlainText.mended(name.isBlank() ? "roster" : name, 200),
                Sha256.of(all.toByteArray()),
                by,
                now(),
                read);
        return new Read.Kept(id);
    }

    /** A file whose columns were mixed up may name thousands. */
    private static String unknown(List<String> courses) {
        int more = courses.size() - COURSES_SHOWN;
        return "There is no course "
                + courses.stream().limit(COURSES_SHOWN).collect(Collectors.joining(", "))
                + (more > 0 ? " and " + more + " more" : "")
                + ". Add it on the page Courses first, or correct the file.";
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Preview> preview(UUID id) {
        return rows.find(id, false).map(this::preview);
    }

    private Preview preview(Stored stored) {
        if (stored.state() != State.READ) {
            return stored.preview(
                    List.of(),
                    List.of(),
                    List.of(),
                    staying(stored),
                    "",
                    stored.state() == State.APPLIED ? done.says(stored.id()) : returns.says(stored.id()));
        }
        Found found = differences.of(rows.rowsOf(stored.id()));
        List<Gone> gone = new ArrayList<>();
        found.takenOut()
                .forEach((code, people) -> gone.add(new Gone(
                        code,
                        !found.namedSections().contains(code),
                        people.stream().map(Enrolled::name).toList(),
                        standing.aheadOf(people.stream()
                                .map(one -> new PersonId(one.person()))
                                .toList()))));
        return stored.preview(
                found.added().stream()
                        .map(row -> row.name() + " (" + row.login() + ")")
                        .toList(),
                found.enrolled().stream()
                        .map(row -> row.name() + ": " + row.sectionCode())
                        .toList(),
                gone,
                notes(found),
                Sha256.of(found.statement()),
                List.of());
    }

    private static List<String> notes(Found found) {
        List<String> notes = new ArrayList<>();
        found.newSections().forEach(code -> notes.add("The section " + code + " will be added."));
        if (!found.teamed().isEmpty()) {
            int count = found.teamed().size();
            notes.add("Pairs and teams: " + (count == 1 ? "1 student comes" : count + " students come") + " into one.");
        }
        if (!found.addressed().isEmpty()) {
            List<String> before = found.addressedBefore();
            int count = found.addressed().size();
            notes.add("E-mail addresses: "
                    + (count == 1 ? "1 person who has none yet gets" : count + " people who have none yet get")
                    + " the file's for their messages."
                    + (before.isEmpty()
                            ? ""
                            : " Of these have an account already: " + String.join(", ", before) + "."));
        }
        notes.addAll(found.notes());
        return notes;
    }

    private List<String> staying(Stored stored) {
        String why = stored.state() == State.APPLIED
                ? ": more than a student of this roster by now; the account stays open when it is taken back."
                : ": more than a student of this roster; the account stayed open.";
        List<String> staying = new ArrayList<>(
                undo.staying(stored.id()).stream().map(name -> name + why).toList());
        if (stored.state() == State.APPLIED) {
            Map<UUID, String> names = undo.letIn(stored.id());
            withBookingsAhead(names.keySet())
                    .forEach(person -> staying.add(names.get(person)
                            + ": has a booking ahead and stays a student of this lab when it is taken back."));
        }
        return staying;
    }

    /** Those of them who have something ahead in this lab. */
    private List<UUID> withBookingsAhead(Collection<UUID> people) {
        Set<PersonId> ahead =
                standing.whoHasAny(people.stream().map(PersonId::new).toList());
        return people.stream()
                .filter(person -> ahead.contains(new PersonId(person)))
                .toList();
    }

    @Override
    public Optional<String> apply(UUID id, boolean takeOut, String fingerprint, PersonId by) {
        Stored stored = rows.find(id, true).orElseThrow();
        if (stored.state() != State.READ) {
            return Optional.of("This roster was applied already.");
        }
        Found found = differences.of(rows.rowsOf(id));
        if (!Sha256.of(found.statement()).equals(fingerprint)) {
            return Optional.of("What the roster would change is not what the page showed: accounts, sections or"
                    + " enrolments changed meanwhile. Look again, then apply it.");
        }
        List<Effect> effects = changes.apply(found, takeOut, now());
        rows.keepEffects(id, effects);
        rows.decide(id, State.APPLIED, by, now());
        done.tellWhoLeft(id);
        tell("people.roster-applied", id, by, "Applied the roster " + stored.fileName(), effects.size());
        return Optional.empty();
    }

    @Override
    public Optional<String> undo(UUID id, PersonId by) {
        Stored stored = rows.find(id, true).orElseThrow();
        if (stored.state() != State.APPLIED) {
            return Optional.of("Only a roster that stands applied can be taken back.");
        }
        TakenBack back = undo.takeBack(id, withBookingsAhead(undo.letIn(id).keySet()), now());
        rows.decide(id, State.UNDONE, by, now());
        returns.keep(id, back);
        done.tellWhoIsBack(back);
        trail.append(TrailEntry.of(
                        labs.theLab().id(),
                        "people.roster-undone",
                        id,
                        by,
                        "Took the roster " + stored.fileName() + " back")
                .with("changes", rows.effects(id))
                .with("accounts-closed", back.closed().size()));
        return Optional.empty();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Return> returns(UUID id, int afterNumber, int atMost) {
        return returns.after(id, afterNumber, atMost);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Preview> latest(int atMost) {
        return rows.latest(atMost).stream().map(Stored::inAList).toList();
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }

    private void tell(String kind, UUID id, PersonId by, String words, int changes) {
        trail.append(TrailEntry.of(labs.theLab().id(), kind, id, by, words).with("changes", changes));
    }
}
