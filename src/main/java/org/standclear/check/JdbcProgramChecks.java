package org.standclear.check;

import java.time.Clock;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.cell.CellVersion;
import org.standclear.cell.Cells;
import org.standclear.check.AnswerRows.Question;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.CellFileReader;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.CheckRequest;
import org.standclear.core.check.ProgramCheck;
import org.standclear.core.check.ProgramFile;
import org.standclear.core.check.ReaderChoice;
import org.standclear.core.check.RuleSet;
import org.standclear.core.limits.CourseLimits;
import org.standclear.core.program.Declaration;
import org.standclear.core.program.DeclarationReader;
import org.standclear.core.text.BadInput;
import org.standclear.core.text.Reading;
import org.standclear.people.Courses;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.program.PhrasebookVersion;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Answers from the store, or computes, and keeps the answer unless an equal question was answered meanwhile. */
@Service
class JdbcProgramChecks implements ProgramChecks {

    /** As long as the column. */
    private static final int LONGEST_KEY = 80;

    private final AnswerRows rows;
    private final Programs programs;
    private final Cells cells;
    private final BooksInForce books;
    private final Courses courses;
    private final CheckTurns turns;
    private final Labs labs;
    private final Trail trail;
    private final Clock clock;

    JdbcProgramChecks(
            AnswerRows rows,
            Programs programs,
            Cells cells,
            BooksInForce books,
            Courses courses,
            CheckTurns turns,
            Labs labs,
            Trail trail,
            Clock clock) {
        this.rows = rows;
        this.programs = programs;
        this.cells = cells;
        this.books = books;
        this.courses = courses;
        this.turns = turns;
        this.labs = labs;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional
    public Outcome check(RevisionId id, CellId cell, @Nullable CourseId course, PersonId operator) {
        Revision revision = programs.find(id).orElseThrow(() -> new IllegalArgumentException("no revision " + id));
        if (programs.isTakenOut(id)) {
            return new Outcome.Unreadable(
                    "The text of this program was taken out at the end of its time. Upload it again.");
        }
        CellVersion version = cells.current(cell);
        LimitsAsked limits = course == null ? limitsOf(operator) : limits(course);
        Optional<PhrasebookVersion> book = books.readerOf(id, cell);
        Question question = new Question(id, cell, version.number(), key(limits, book), RuleSet.CURRENT);
        Optional<StoredAnswer> known = rows.find(question);
        if (known.isPresent()) {
            return new Outcome.Answered(known.get());
        }
        Optional<Reading<CheckAnswer>> computed =
                turns.take(revision.sizeBytes(), () -> compute(revision, version, limits.limits(), book));
        if (computed.isEmpty()) {
            return new Outcome.Busy("Several large programs are being checked just now. Nothing was stored."
                    + " Send the form again in half a minute.");
        }
        if (computed.get() instanceof Reading.Refused<CheckAnswer> refused) {
            return new Outcome.Unreadable(sentence(refused.why()));
        }
        return new Outcome.Answered(keep(question, computed.get().value(), revision, limits));
    }

    private Reading<CheckAnswer> compute(
            Revision revision, CellVersion version, CourseLimits limits, Optional<PhrasebookVersion> book) {
        CellDescription cell = CellFileReader.read(version.file()).value();
        String declaration = revision.declaration();
        Declaration declared =
                declaration == null ? null : DeclarationReader.read(declaration).value();
        return ProgramFile.of(programs.bytes(revision.id()))
                .then(file -> ProgramCheck.check(CheckRequest.of(cell, file)
                        .readBy(ReaderChoice.of(
                                file.text(), book.map(PhrasebookVersion::reader).orElse(null)))
                        .declaring(declared)
                        .under(limits)));
    }

    private StoredAnswer keep(Question question, CheckAnswer answer, Revision revision, LimitsAsked limits) {
        rows.lock(question.revision());
        Optional<StoredAnswer> meanwhile = rows.find(question);
        if (meanwhile.isPresent()) {
            return meanwhile.get();
        }
        StoredAnswer stored = new StoredAnswer(
                AnswerId.next(),
                question.revision(),
                question.cell(),
                question.cellVersion(),
                Answers.verdict(answer),
                question.ruleSet(),
                Answers.json(answer),
                Answers.benchFacts(answer),
                SqlTime.stored(clock.instant()));
        rows.add(stored, question, Answers.details(answer, limits));
        append(stored, answer, revision);
        return stored;
    }

    private void append(StoredAnswer stored, CheckAnswer answer, Revision revision) {
        String cell = answer.program().cell().name() + " version " + stored.cellVersion();
        String words = "\"" + revision.title() + "\" revision " + revision.number() + " was checked against " + cell
                + ": " + stored.verdict().words();
        trail.append(TrailEntry.of(labs.theLab().id(), "check.answered", stored.id(), null, words)
                .with("revision", revision.id())
                .with("sha256", revision.sha256())
                .with("cell", stored.cell())
                .with("cell-version", stored.cellVersion())
                .with("rule-set", stored.ruleSet()));
    }

    private LimitsAsked limits(CourseId id) {
        return LimitsAsked.of(courses.find(id).orElseThrow(() -> new IllegalArgumentException("no course " + id)));
    }

    private LimitsAsked limitsOf(PersonId operator) {
        return LimitsAsked.strictest(courses.takenBy(operator));
    }

    /** Equal limits of two courses are one question; another version of the phrasebook makes another one. */
    private static String key(LimitsAsked limits, Optional<PhrasebookVersion> book) {
        String key = limits.key()
                + book.map(version -> ", phrasebook " + version.number()).orElse("");
        return key.length() <= LONGEST_KEY ? key : Sha256.of(key);
    }

    @Override
    public boolean isInForce(AnswerId id, @Nullable CourseId course, PersonId operator) {
        LimitsAsked limits = course == null ? limitsOf(operator) : limits(course);
        return rows.brief(id)
                .map(answer -> key(limits, books.readerOf(answer.revision(), answer.cell())))
                .filter(key -> rows.standsOn(id, key, RuleSet.CURRENT))
                .isPresent();
    }

    private static String sentence(BadInput bad) {
        String sentence = bad.sentence();
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }

    @Override
    public Optional<StoredAnswer> find(AnswerId id) {
        return rows.find(id);
    }

    @Override
    public Optional<AnswerBrief> brief(AnswerId id) {
        return rows.brief(id);
    }

    @Override
    public Optional<AnswerDetails> details(AnswerId id) {
        return rows.details(id);
    }

    @Override
    public Optional<CheckAnswer> again(AnswerId id) {
        StoredAnswer answer = rows.find(id).orElseThrow(() -> new IllegalArgumentException("no answer " + id));
        Revision revision = programs.find(answer.revision()).orElseThrow(IllegalStateException::new);
        CellVersion version =
                cells.version(answer.cell(), answer.cellVersion()).orElseThrow(IllegalStateException::new);
        Optional<PhrasebookVersion> book = books.readerOf(revision.id(), answer.cell());
        CourseLimits limits = LimitsInForce.of(answer);
        Optional<Reading<CheckAnswer>> computed =
                turns.take(revision.sizeBytes(), () -> compute(revision, version, limits, book));
        // a phrasebook may have changed since, and a course's limit stands for the cell's: what moves must be the same
        return computed.filter(reading -> reading instanceof Reading.Read<CheckAnswer>)
                .map(Reading::value)
                .filter(again -> LimitsInForce.sameMotion(answer, Answers.json(again)));
    }

    @Override
    public List<StoredAnswer> answersFor(RevisionId revision) {
        return rows.answersFor(revision);
    }

    @Override
    public List<AnswerBrief> briefFor(RevisionId revision) {
        return rows.briefFor(revision);
    }

    @Override
    public Map<RevisionId, List<AnswerBrief>> briefsFor(Collection<RevisionId> revisions) {
        return rows.briefsFor(revisions);
    }
}
