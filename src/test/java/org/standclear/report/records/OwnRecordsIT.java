package org.standclear.report.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;
import org.standclear.report.OwnRecords;
import org.standclear.report.OwnRecords.Outcome;
import org.standclear.report.OwnRecords.Question;
import org.standclear.run.RunLog;
import org.standclear.run.Runs;
import org.standclear.signoff.BenchCases;
import org.standclear.signoff.Release;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A person reads what is kept about them, and asks about it. */
class OwnRecordsIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        OwnRecords records;

        @Autowired
        RunLog log;

        @Autowired
        Runs runs;

        private List<String> lines(Person person) {
            return records.of(person.id()).stream()
                    .flatMap(section -> section.lines().stream())
                    .toList();
        }

        @Test
        void showsEverybodyTheirOwnLinesOnly() {
            Release release = scene().released();
            log.start(scene().booking, release.code(), scene().noor.id());
            assertThat(lines(scene().noor))
                    .anyMatch(line -> line.contains("as operator, 0 passes"))
                    .anyMatch(line -> line.contains("bench list as operator, signed as Noor Candlewick"))
                    .anyMatch(line -> line.contains("induction passed"))
                    .noneMatch(line -> line.contains("Mateo"));
            assertThat(lines(scene().adaeze)).anyMatch(line -> line.contains("as releaser"));
            assertThat(lines(scene().lab.student("Leilani Driftmark"))).allMatch(line -> line.contains("induction"));
        }

        @Test
        void saysWhoPrintedARunWithNames() {
            Release release = scene().released();
            log.start(scene().booking, release.code(), scene().noor.id());
            records.printed(
                    runs.of(scene().booking).orElseThrow().id(), scene().hemi.id());
            assertThat(lines(scene().mateo)).anyMatch(line -> line.contains("Hemi Coppergate printed the paper"));
        }

        @Test
        void asksAboutAnOwnLineAndIsAnsweredBySomebodyElse() {
            scene().released();
            String line = lines(scene().noor).get(0);
            assertThat(records.ask(scene().mateo.id(), line, "not mine")).isInstanceOf(Outcome.Refused.class);
            assertThat(records.ask(scene().noor.id(), line, "I was not there.")).isEqualTo(new Outcome.Kept());
            Question asked = records.questionsOf(scene().noor.id()).get(0);
            assertThat(asked.about()).isEqualTo(line);
            assertThat(records.answer(asked.id(), "My own.", scene().noor.id())).isInstanceOf(Outcome.Refused.class);

            Person ines = scene().lab.person("Tomasz Fennimore-Ash", Role.INSTRUCTOR);
            assertThat(records.answer(asked.id(), "You signed at 10:09.", ines.id()))
                    .isEqualTo(new Outcome.Kept());
            assertThat(records.answer(asked.id(), "Again.", ines.id())).isInstanceOf(Outcome.Refused.class);
            assertThat(Objects.requireNonNull(records.questionsOf(scene().noor.id())
                                    .get(0)
                                    .answer())
                            .words())
                    .isEqualTo("You signed at 10:09.");
            assertThat(records.questionsOf(scene().mateo.id())).isEmpty();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
