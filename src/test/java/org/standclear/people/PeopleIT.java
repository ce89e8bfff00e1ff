package org.standclear.people;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Outcome;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** People are added, found and changed alike on both engines. */
class PeopleIT {

    abstract static class Cases {

        @Autowired
        People people;

        @Autowired
        PeopleRegister register;

        @Autowired
        JdbcClient jdbc;

        private Person add(String name, Role... roles) {
            return ((Outcome.Done) register.add(asked("p" + UUID.randomUUID(), name, roles))).person();
        }

        private static NewPerson asked(String login, String name, Role... roles) {
            return new NewPerson(login, name, Set.of(roles), new Password.Hashed("{never}"), null);
        }

        private int version(PersonId id) {
            return jdbc.sql("select version from people where id = ?")
                    .param(id.value())
                    .query(Integer.class)
                    .single();
        }

        @Test
        void findsPeopleByIdLoginAndRole() {
            Person yuki = add("Yuki Halfmoon", Role.STUDENT, Role.TECHNICIAN);

            assertThat(people.find(yuki.id())).contains(yuki);
            assertThat(people.byLogin(" " + yuki.login().toUpperCase(java.util.Locale.ROOT)))
                    .contains(yuki);
            assertThat(people.with(Role.TECHNICIAN)).contains(yuki);
            assertThat(people.with(Role.REVIEWER)).doesNotContain(yuki);
            PersonId nobody = PersonId.next();
            assertThat(people.all(List.of(yuki.id(), nobody))).isEqualTo(Map.of(yuki.id(), yuki));
            assertThat(people.printedName(nobody)).isEqualTo("unknown");
        }

        @Test
        void listsByPrintedNameWhateverTheCapitals() {
            Person second = add("bARAKA Hollowell", Role.REVIEWER);
            Person first = add("Amara Nettleship", Role.REVIEWER);
            Person third = add("Linnea Brass", Role.REVIEWER);

            assertThat(people.with(Role.REVIEWER)).containsSubsequence(first, second, third);
        }

        @Test
        void keepsMarkupAsItIsAndRefusesControlCharacters() {
            assertThat(add("<b>Kofi</b> & co", Role.STUDENT).printedName()).isEqualTo("<b>Kofi</b> & co");
            assertThat(register.add(asked("kofi2", "Kofi\u0007", Role.STUDENT)))
                    .isInstanceOfSatisfying(
                            Outcome.Refused.class,
                            refused -> assertThat(refused.field()).isEqualTo("printedName"));
        }

        @Test
        void refusesWhatCannotBeAnAccount() {
            add("Tal Emberley", Role.STUDENT);
            assertThat(field(asked("", "Tal", Role.STUDENT))).isEqualTo("login");
            assertThat(field(asked("two words", "Tal", Role.STUDENT))).isEqualTo("login");
            assertThat(field(asked("a".repeat(61), "Tal", Role.STUDENT))).isEqualTo("login");
            assertThat(field(asked("tal\u0000x", "Tal", Role.STUDENT))).isEqualTo("login");
            assertThat(field(asked("tal-x", "T".repeat(81), Role.STUDENT))).isEqualTo("printedName");
            assertThat(field(asked("tal-x", "Tal"))).isEqualTo("roles");
            assertThat(field(asked("tal-x", "Tal", Role.BENCH, Role.STUDENT))).isEqualTo("roles");
            assertThat(field(new NewPerson("tal-x", "Tal", Set.of(Role.STUDENT), new Password.Chosen("short"), null)))
                    .isEqualTo("password");
            assertThat(people.byLogin("tal-x")).isEmpty();
        }

        private String field(NewPerson asked) {
            return ((Outcome.Refused) register.add(asked)).field();
        }

        @Test
        void refusesASignInNameThatIsTakenInOtherCapitals() {
            Person osric = add("Osric Plum", Role.STUDENT);

            assertThat(field(asked(osric.login().toUpperCase(java.util.Locale.ROOT), "Osric Plum", Role.STUDENT)))
                    .isEqualTo("login");
        }

        @Test
        void changesRolesOnceForEachVersionSeen() {
            Person admin = add("Ines Quarryvale", Role.ADMINISTRATOR);
            Person noor = add("Noor Candlewick", Role.STUDENT);
            int seen = version(noor.id());

            assertThat(register.setRoles(noor.id(), Set.of(Role.TECHNICIAN), seen, admin.id()))
                    .isInstanceOfSatisfying(
                            Outcome.Done.class,
                            done -> assertThat(done.person().roles()).containsExactly(Role.TECHNICIAN));
            assertThat(register.setRoles(noor.id(), Set.of(Role.REVIEWER), seen, admin.id()))
                    .isInstanceOf(Outcome.Stale.class);
            assertThat(people.find(noor.id()).orElseThrow().roles()).containsExactly(Role.TECHNICIAN);
        }

        @Test
        void leavesDeactivatedPeopleFindableButInNoList() {
            Person admin = add("Ines Quarryvale", Role.ADMINISTRATOR);
            Person pilar = add("Pilar Featherstone", Role.TECHNICIAN);

            register.deactivate(pilar.id(), "left the college", admin.id());

            assertThat(people.find(pilar.id()).orElseThrow().active()).isFalse();
            assertThat(people.with(Role.TECHNICIAN)).doesNotContain(pilar);
            register.activate(pilar.id(), "came back", admin.id());
            assertThat(people.with(Role.TECHNICIAN)).contains(pilar);
        }

        @Test
        void keepsAnAdministratorThoughTwoCloseEachOtherAtOnce() throws Exception {
            jdbc.sql("delete from person_roles where role = 'ADMINISTRATOR'").update();
            Person one = add("Ada One", Role.ADMINISTRATOR);
            Person two = add("Bo Two", Role.ADMINISTRATOR);
            var both = Executors.newFixedThreadPool(2);
            try {
                both.invokeAll(List.<Callable<Outcome>>of(
                        () -> register.deactivate(one.id(), "mistake", two.id()),
                        () -> register.deactivate(two.id(), "mistake", one.id())));
            } finally {
                both.shutdown();
            }

            assertThat(people.with(Role.ADMINISTRATOR)).hasSize(1);
            Person left = people.with(Role.ADMINISTRATOR).get(0);
            assertThat(register.deactivate(left.id(), "on purpose", left.id())).isInstanceOf(Outcome.Refused.class);
            assertThat(register.setRoles(left.id(), Set.of(Role.STUDENT), version(left.id()), one.id()))
                    .isInstanceOf(Outcome.Refused.class);
        }

        @Test
        void storesNoPasswordInTheClear() {
            String raw = "a lamp over tern hall";
            var done = (Outcome.Done) register.add(new NewPerson(
                    "q" + UUID.randomUUID(),
                    "Dmitri Longshadow",
                    Set.of(Role.STUDENT),
                    new Password.Chosen(raw),
                    null));

            assertThat(jdbc.sql("select password_hash from people where id = ?")
                            .param(done.person().id().value())
                            .query(String.class)
                            .single())
                    .startsWith("$argon2id$")
                    .doesNotContain("lamp");
            assertThat(new Password.Chosen(raw).toString()).doesNotContain("lamp");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
