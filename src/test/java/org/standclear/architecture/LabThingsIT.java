package org.standclear.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.platform.lab.LabOwners;
import org.standclear.platform.lab.LabThings;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Every table of things with an id says whose they are, so that no address can name one of another lab unseen. */
class LabThingsIT {

    /** Nobody's in particular, or never named by an address or a form: with the reason. */
    private static final Set<String> NO_LABS_THINGS = Set.of(
            // of one person wherever they go, and reached by that person's own pages only
            "personal_tokens",
            "accommodations",
            // of a lab that its reader is not of yet; who asked and who is asked are looked at by the service
            "course_invitations",
            // the database's own bookkeeping, behind bookings and programs
            "booking_claims",
            "program_contents");

    abstract static class Cases {

        @Autowired
        JdbcClient jdbc;

        @Autowired
        List<LabThings> features;

        @Autowired
        LabOwners owners;

        @Test
        void everyTableWithAnIdIsNamed() {
            assertThat(unnamed(features, jdbc)).isEmpty();
        }

        @Test
        void noTableIsNamedThatIsNotThere() {
            Set<String> there = withId(jdbc);

            assertThat(there).hasSizeGreaterThan(45);
            assertThat(named(features)).isSubsetOf(there);
            assertThat(there).containsAll(NO_LABS_THINGS);
        }

        @Test
        void catchesATableThatIsForgotten() {
            List<LabThings> without = features.stream()
                    .filter(feature -> feature.kinds().stream()
                            .noneMatch(kind -> kind.table().equals("bookings")))
                    .toList();

            assertThat(unnamed(without, jdbc)).contains("bookings");
        }

        @Test
        void theLookUpIsGoodSqlOnThisEngine() {
            assertThat(owners.of(List.of(UUID.randomUUID(), UUID.randomUUID()))).isEmpty();
        }
    }

    private static Set<String> unnamed(List<LabThings> features, JdbcClient jdbc) {
        Set<String> tables = withId(jdbc);
        tables.removeAll(named(features));
        tables.removeAll(NO_LABS_THINGS);
        return tables;
    }

    private static Set<String> named(List<LabThings> features) {
        return features.stream()
                .flatMap(feature -> feature.kinds().stream())
                .map(LabThings.Kind::table)
                .collect(Collectors.toSet());
    }

    private static Set<String> withId(JdbcClient jdbc) {
        return new TreeSet<>(jdbc.sql("""
                select lower(c.table_name) from information_schema.columns c
                join information_schema.tables t on t.table_schema = c.table_schema and t.table_name = c.table_name
                where lower(c.table_schema) = 'public' and lower(c.column_name) = 'id'
                  and t.table_type = 'BASE TABLE' and lower(c.data_type) = 'uuid'""").query(String.class).list());
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
