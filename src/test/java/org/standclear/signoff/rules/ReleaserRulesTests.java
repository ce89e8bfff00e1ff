package org.standclear.signoff.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.signoff.Obstacle;

class ReleaserRulesTests {

    private static List<Obstacle> ask(Person person, PersonId author, boolean onDuty) {
        return ask(person, author, onDuty, null);
    }

    private static List<Obstacle> ask(Person person, PersonId author, boolean onDuty, @Nullable String elsewhere) {
        return ReleaserRules.ask(new ReleaserRules.Question(
                person,
                Bench.booking(Bench.MATEO.id(), Bench.REVISION.id()),
                author,
                onDuty,
                false,
                elsewhere,
                List.of(Bench.ADAEZE, Bench.HEMI)));
    }

    private static List<String> codes(Person person, PersonId author, boolean onDuty) {
        return ask(person, author, onDuty).stream().map(Obstacle::code).toList();
    }

    @Test
    void letsStaffOnDutyRelease() {
        assertThat(ask(Bench.ADAEZE, Bench.NOOR.id(), true)).isEmpty();
    }

    @Test
    void refusesStaffOffDutyAndNamesTheOthers() {
        assertThat(ask(Bench.ADAEZE, Bench.NOOR.id(), false)).singleElement().satisfies(obstacle -> {
            assertThat(obstacle.says()).isEqualTo("Only staff on duty release.");
            assertThat(obstacle.mend()).isEqualTo("Hemi Coppergate can do it.");
        });
    }

    @Test
    void refusesTheAuthor() {
        assertThat(codes(Bench.ADAEZE, Bench.ADAEZE.id(), true)).containsExactly("releaser-is-author");
    }

    @Test
    void refusesOperatorAndAttendantOfTheRun() {
        assertThat(codes(Bench.NOOR, Bench.NOOR.id(), true)).contains("releaser-is-operator", "releaser-not-staff");
        assertThat(codes(Bench.MATEO, Bench.NOOR.id(), true)).contains("releaser-is-attendant", "releaser-not-staff");
    }

    @Test
    void refusesWhoIsInARunOnAnotherCell() {
        assertThat(ask(Bench.ADAEZE, Bench.NOOR.id(), true, "Bittern"))
                .singleElement()
                .satisfies(obstacle -> {
                    assertThat(obstacle.code()).isEqualTo("releaser-elsewhere");
                    assertThat(obstacle.mend()).isEqualTo("Hemi Coppergate can do it.");
                });
    }

    @Test
    void refusesWhoIsNotStaff() {
        Person reviewer = Bench.person("Rosalind Oyelaran-Pike", Role.REVIEWER);
        assertThat(codes(reviewer, Bench.NOOR.id(), true)).containsExactly("releaser-not-staff");
        Person instructor = Bench.person("Ines Quarryvale", Role.INSTRUCTOR);
        assertThat(codes(instructor, Bench.NOOR.id(), true)).isEmpty();
    }

    @Test
    void refusesWhoAttendedTheRunBefore() {
        ReleaserRules.Question question = new ReleaserRules.Question(
                Bench.ADAEZE,
                Bench.booking(Bench.MATEO.id(), Bench.REVISION.id()),
                Bench.NOOR.id(),
                true,
                true,
                null,
                List.of(Bench.ADAEZE, Bench.HEMI));
        assertThat(ReleaserRules.ask(question)).extracting(Obstacle::code).containsExactly("releaser-attended-before");
    }
}
