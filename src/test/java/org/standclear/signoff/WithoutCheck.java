package org.standclear.signoff;

import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Primary;
import org.standclear.cell.Cells;
import org.standclear.check.BenchFacts;
import org.standclear.check.ProgramChecks;
import org.standclear.check.StoredAnswer;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ProgramId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.program.Programs;
import org.standclear.program.Revision;

/** Programs and answers in memory. */
@TestConfiguration(proxyBeanMethods = false)
public class WithoutCheck {

    @Bean
    @Primary
    SamplePrograms samplePrograms(Clock clock) {
        return new SamplePrograms(clock);
    }

    @Bean
    @Primary
    ProgramChecks sampleChecks(SamplePrograms programs, Cells cells, Clock clock) {
        return new SampleChecks(programs, cells, clock);
    }

    /** Programs in memory. */
    public static final class SamplePrograms implements Programs {
        private final List<Revision> all = new CopyOnWriteArrayList<>();
        private final Clock clock;

        SamplePrograms(Clock clock) {
            this.clock = clock;
        }

        public Revision add(PersonId author, @Nullable ProgramId program, String file) {
            ProgramId id = program == null ? ProgramId.next() : program;
            Revision revision = new Revision(
                    RevisionId.next(),
                    id,
                    revisions(id).size() + 1,
                    "Peg and plate",
                    "peg.yaml",
                    author,
                    clock.instant(),
                    Sha256.of(file),
                    file.length(),
                    null,
                    Sha256.of(""));
            all.add(revision);
            return revision;
        }

        @Override
        public Optional<Revision> find(RevisionId id) {
            return all.stream().filter(one -> one.id().equals(id)).findFirst();
        }

        @Override
        public Optional<Revision> findFor(PersonId person, RevisionId id) {
            return find(id);
        }

        @Override
        public List<Revision> revisions(ProgramId program) {
            List<Revision> found = new ArrayList<>(
                    all.stream().filter(one -> one.program().equals(program)).toList());
            found.sort(Comparator.comparing(Revision::number).reversed());
            return found;
        }

        @Override
        public List<Revision> revisionsFor(PersonId person, ProgramId program) {
            return revisions(program);
        }

        @Override
        public List<Revision> latestOf(PersonId author) {
            return all.stream().filter(one -> one.author().equals(author)).toList();
        }

        @Override
        public Page page(PageRequest request) {
            return new Page(all, null);
        }

        @Override
        public byte[] bytes(RevisionId id) {
            return new byte[0];
        }
    }

    private record SampleChecks(SamplePrograms programs, Cells cells, Clock clock, List<StoredAnswer> kept)
            implements ProgramChecks {

        SampleChecks(SamplePrograms programs, Cells cells, Clock clock) {
            this(programs, cells, clock, new CopyOnWriteArrayList<>());
        }

        @Override
        public Outcome check(RevisionId revision, CellId cell, @Nullable CourseId course) {
            int version = cells.current(cell).number();
            boolean within = programs.find(revision).orElseThrow().sizeBytes() < 100;
            StoredAnswer answer = kept.stream()
                    .filter(one -> one.revision().equals(revision) && one.cellVersion() == version)
                    .findFirst()
                    .orElseGet(() -> new StoredAnswer(
                            AnswerId.next(),
                            revision,
                            cell,
                            version,
                            within ? StoredAnswer.Verdict.WITHIN : StoredAnswer.Verdict.OUTSIDE,
                            "1",
                            "{\"findings\":[{\"check\":\"tool-speed\",\"outcome\":\"outside\",\"says\":\"Too fast.\"}]}",
                            new BenchFacts("reduced", 50.0, 50, "G-02", 0.06, 0.48, "5", 125.0, 913.4, 12.3, List.of()),
                            clock.instant()));
            kept.add(answer);
            return new Outcome.Answered(answer);
        }

        @Override
        public Optional<StoredAnswer> find(AnswerId id) {
            return kept.stream().filter(one -> one.id().equals(id)).findFirst();
        }

        @Override
        public List<StoredAnswer> answersFor(RevisionId revision) {
            return kept.stream().filter(one -> one.revision().equals(revision)).toList();
        }
    }
}
