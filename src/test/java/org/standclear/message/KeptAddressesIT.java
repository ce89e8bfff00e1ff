package org.standclear.message;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.people.MailAddresses;
import org.standclear.people.PeopleRegister;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.StatementCount;
import org.standclear.testing.web.Accounts;

/** Addresses from elsewhere are kept together, for people who have said nothing yet. */
class KeptAddressesIT {

    abstract static class Cases {

        @Autowired
        MailAddresses addresses;

        @Autowired
        Messages messages;

        @Autowired
        PeopleRegister register;

        @Autowired
        JdbcTemplate jdbc;

        @Autowired
        TransactionTemplate transaction;

        Map<PersonId, String> addressesOf(int people) {
            Map<PersonId, String> made = new LinkedHashMap<>();
            for (int i = 0; i < people; i++) {
                PersonId person =
                        Accounts.add(register, "Somebody " + i, Role.STUDENT).id();
                made.put(person, person + "@example.org");
            }
            return made;
        }

        String kept(PersonId person) {
            return messages.wishesOf(person).orElseThrow().address();
        }

        @Test
        void keepsWhatSomebodyHasSaid() {
            Map<PersonId, String> two = addressesOf(2);
            PersonId first = two.keySet().iterator().next();
            addresses.keep(Map.of(first, "own@example.org"));

            addresses.keep(two);

            assertThat(kept(first)).isEqualTo("own@example.org");
            two.remove(first);
            two.forEach((person, address) -> assertThat(kept(person)).isEqualTo(address));
        }

        @Test
        void leavesOutWhoHasNoAccount() {
            PersonId nobody = PersonId.next();
            addresses.keep(Map.of(nobody, "nobody@example.org"));
            assertThat(addresses.known()).doesNotContain(nobody);
        }

        @Test
        void asksForManyAsForOne() throws Exception {
            Map<PersonId, String> one = addressesOf(1);
            Map<PersonId, String> many = addressesOf(60);
            int asked = StatementCount.of(() -> addresses.keep(one));
            assertThat(asked).isPositive();
            assertThat(StatementCount.of(() -> addresses.keep(many))).isEqualTo(asked);
            many.forEach((person, address) -> assertThat(kept(person)).isEqualTo(address));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {

        /** The server counts them itself, by a trigger for each statement that is rolled back with them. */
        @Test
        void writesManyInFewStatements() {
            Map<PersonId, String> many = addressesOf(60);
            Integer statements = transaction.execute(status -> {
                jdbc.execute("create temporary table counted_statements (number integer) on commit drop");
                jdbc.execute("""
                        create function count_statement() returns trigger language plpgsql as $$
                        begin
                            insert into pg_temp.counted_statements values (1);
                            return null;
                        end $$""");
                jdbc.execute("create trigger counted after insert on message_settings"
                        + " for each statement execute function count_statement()");
                addresses.keep(many);
                status.setRollbackOnly();
                return Objects.requireNonNull(
                        jdbc.queryForObject("select count(*) from counted_statements", Integer.class));
            });
            // the driver sends powers of two: 32 + 16 + 8 + 4
            assertThat(statements).isBetween(1, 6);
        }
    }
}
