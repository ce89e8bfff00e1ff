package org.standclear.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.context.annotation.Import;
import org.standclear.testing.OnH2;

/**
 * Terms of lab life from seeds; after every act the invariants hold. {@code -Dsimulation.seed=7 -Dsimulation.terms=1} plays
 * the term of one seed again, to the same step.
 */
@OnH2
@Import({MortalDatabase.class, NoTurns.class})
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SimulatedTermsIT {

    private static final int WEEKS = 12;
    private static final long FIRST = Long.getLong("simulation.seed", 1);
    private static final int TERMS = Integer.getInteger("simulation.terms", 20);

    /** So many terms leave nothing out that people do. */
    private static final int MANY = 20;

    private final ApplicationContext application;
    private final Terms terms;
    private boolean played;

    SimulatedTermsIT(@Autowired ApplicationContext application) throws SQLException {
        this.application = application;
        terms = new Terms(application);
    }

    @BeforeAll
    void remembersTheEmptyLab() {
        assertThat(application.getBeansOfType(MortalDatabase.Mortality.class)).hasSize(1);
    }

    /** A thousand terms take more than the ten minutes that every other test has to do with. */
    @Test
    @Timeout(value = 10, unit = TimeUnit.HOURS)
    void invariantsHoldAfterEveryActOfATerm() throws SQLException {
        played = false;
        Tally tally = new Tally();
        List<String> broken = new ArrayList<>();
        for (long seed = FIRST; seed < FIRST + TERMS; seed++) {
            try {
                Journal journal = terms.play(seed, WEEKS);
                tally.add(journal);
                tell(seed, journal.lines().size() + " acts, " + journal.took().toMillis() + " ms");
            } catch (AssertionError fault) {
                // the others are played all the same
                broken.add(String.valueOf(fault.getMessage()));
                tell(seed, "BROKEN " + fault.getMessage());
            }
        }
        System.out.println(TERMS + " terms: " + tally + "; " + broken.size() + " broken");
        assertThat(broken).isEmpty();
        // a term in which nothing runs would prove nothing
        assertThat(tally.of("starts")).isGreaterThan(8L * TERMS);
        assertThat(tally.of("close-outs")).isGreaterThan(4L * TERMS);
        assertThat(tally.of("stops")).isGreaterThan(2L * TERMS);
        assertThat(tally.of("incidents")).isGreaterThan(3L * TERMS);
        assertThat(tally.of("restarts approved")).isGreaterThan(TERMS);
        assertThat(tally.of("inspections")).isGreaterThan(TERMS);
        assertThat(tally.of("unread lines waived")).isGreaterThan(TERMS);
        assertThat(tally.of("unread lines not waived")).isPositive();
        assertThat(tally.deaths()).isGreaterThan(5L * TERMS);
        if (TERMS >= MANY) {
            assertThat(tally.counts())
                    .allSatisfy((act, times) -> assertThat(times).as(act).isPositive());
        }
    }

    private static void tell(long seed, String what) {
        if (TERMS > MANY) {
            System.out.println("seed " + seed + ": " + what);
        }
    }

    @Test
    void playsTheSameTermAgain() throws SQLException {
        played = false;
        List<String> once = terms.play(7, 3).lines();
        assertThat(once).hasSizeGreaterThan(60);
        assertThat(terms.play(7, 3).lines()).isEqualTo(once);
        assertThat(terms.play(8, 3).lines()).isNotEqualTo(once);
    }

    /** Emptied tables are as good as new ones. */
    @Test
    void beginsEachTermInAnEmptyLab() throws SQLException {
        played = false;
        terms.play(5, 1);
        List<String> before = withoutComments(terms.emptyLab());
        terms.emptied();
        List<String> after = withoutComments(terms.script());
        assertThat(after.stream().filter(line -> !before.contains(line))).isEmpty();
        assertThat(before.stream().filter(line -> !after.contains(line))).isEmpty();
    }

    /** What the database estimates of its tables stands in comments. */
    private static List<String> withoutComments(List<String> script) {
        return script.stream().filter(line -> !line.startsWith("--")).sorted().toList();
    }

    static Stream<PlantedFault> faults() {
        return PlantedFault.ALL.stream();
    }

    /** Whether everything happened in the term that a fault can be planted in. */
    private static boolean isRich(Statement statement) throws SQLException {
        try (ResultSet found = statement.executeQuery("""
                select (select count(distinct kind) from incident_evidence_pieces where kind in ('program', 'cell version')),
                    (select count(*) from booking_offers where state = 'TAKEN'),
                    (select count(*) from booking_offers where state in ('DECLINED', 'EXPIRED')),
                    (select count(*) from booking_waits where ended_how in ('PAST', 'LEFT')),
                    (select count(*) from booking_closures where removed_at is not null), (select count(*) from bookings where state = 'CANCELLED'), (select count(*) from run_credits where spent_for is null),
                    (select count(*) from signoff_paper_cards), (select count(*) from cell_tool_changes where open_mark is null), (select count(*) from labs) - 1,
                    (select count(*) from incident_restarts),
                    (select count(*) from signoff_waivers where used_at is not null), (select count(*) from incident_actions where done_at is not null),
                    (select count(*) from incidents where state = 'CLOSED' and class in ('CONTACT', 'PROPERTY_DAMAGE'))""")) {
            found.next();
            boolean rich = found.getInt(1) == 2;
            for (int column = 2; column <= found.getMetaData().getColumnCount(); column++) {
                rich = rich && found.getInt(column) > 0;
            }
            return rich;
        }
    }

    /** Each invariant catches what breaks it. */
    @ParameterizedTest
    @MethodSource("faults")
    void catches(PlantedFault fault) throws SQLException {
        Connection connection = terms.connection();
        try (Statement statement = connection.createStatement()) {
            if (!played) {
                // not again for each fault when it breaks
                played = true;
                for (long seed = 90; !isRich(statement); seed += 3) {
                    terms.play(seed, WEEKS);
                    System.out.println("faults are planted in what came of seed " + seed);
                }
                terms.spoiled();
                for (String guard : PlantedFault.GUARDS) {
                    statement.execute(guard);
                }
                assertThat(Auditor.whole(connection, Term.END)).isEmpty();
            }
            connection.setAutoCommit(false);
            assertThat(statement.executeUpdate(fault.sql())).as(fault.sql()).isPositive();
            assertThat(Auditor.whole(connection, Term.END))
                    .anySatisfy(found -> assertThat(found).contains(fault.expected()));
        } finally {
            connection.rollback();
            connection.setAutoCommit(true);
        }
    }

    @Test
    void catchesWhatIsLost() throws SQLException {
        terms.play(22, WEEKS);
        played = false;
        Connection connection = terms.connection();
        terms.spoiled();
        try (Statement statement = connection.createStatement()) {
            Auditor auditor = new Auditor(connection);
            assertThat(auditor.look(Term.END)).isEmpty();
            statement.execute("set referential_integrity false");
            for (String table : Growth.TABLES) {
                forget(table, statement);
            }
            List<String> found = new ArrayList<>();
            for (int act = 0; act < 10; act++) {
                found.addAll(auditor.look(Term.END));
            }
            assertThat(Growth.TABLES)
                    .allSatisfy(table ->
                            assertThat(found).anySatisfy(one -> assertThat(one).startsWith(table + " has lost")));
        } finally {
            try (Statement statement = connection.createStatement()) {
                statement.execute("set referential_integrity true");
            }
        }
    }

    private static void forget(String table, Statement statement) throws SQLException {
        List<String> guards = new ArrayList<>();
        try (ResultSet found = statement.executeQuery(
                "select trigger_name from information_schema.triggers where event_object_table = upper('" + table
                        + "')")) {
            while (found.next()) {
                guards.add(found.getString(1));
            }
        }
        for (String guard : guards) {
            statement.execute("drop trigger if exists \"" + guard + "\"");
        }
        assertThat(statement.executeUpdate("delete from " + table)).as(table).isPositive();
    }
}
