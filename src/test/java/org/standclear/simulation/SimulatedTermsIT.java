package org.standclear.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
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

    @Test
    void invariantsHoldAfterEveryActOfATerm() throws SQLException {
        played = false;
        long acts = 0;
        long starts = 0;
        long closeOuts = 0;
        long stops = 0;
        long deaths = 0;
        for (long seed = FIRST; seed < FIRST + TERMS; seed++) {
            Journal journal = terms.play(seed, WEEKS);
            acts += journal.lines().size();
            starts += journal.count("released: kept");
            closeOuts += journal.count("ODD kept");
            stops += journal.count("_STOP on ") + journal.count("_PRESS on ");
            deaths += journal.deaths();
        }
        System.out.println(TERMS + " terms: " + acts + " acts, " + starts + " starts, " + stops + " stops, " + closeOuts
                + " close-outs, " + deaths + " deaths of the process; every invariant held after every act");
        // a term in which nothing runs would prove nothing
        assertThat(starts).isGreaterThan(8L * TERMS);
        assertThat(closeOuts).isGreaterThan(4L * TERMS);
        assertThat(stops).isGreaterThan(2L * TERMS);
        assertThat(deaths).isGreaterThan(5L * TERMS);
    }

    @Test
    void playsTheSameTermAgain() throws SQLException {
        played = false;
        List<String> once = terms.play(7, 3).lines();
        assertThat(once).hasSizeGreaterThan(60);
        assertThat(terms.play(7, 3).lines()).isEqualTo(once);
        assertThat(terms.play(8, 3).lines()).isNotEqualTo(once);
    }

    static Stream<PlantedFault> faults() {
        return PlantedFault.ALL.stream();
    }

    /** Each invariant catches what breaks it. */
    @ParameterizedTest
    @MethodSource("faults")
    void catches(PlantedFault fault) throws SQLException {
        Connection connection = terms.connection();
        try (Statement statement = connection.createStatement()) {
            if (!played) {
                terms.play(21, 8);
                for (String guard : PlantedFault.GUARDS) {
                    statement.execute(guard);
                }
                played = true;
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
        terms.play(22, 4);
        played = false;
        Connection connection = terms.connection();
        try (Statement statement = connection.createStatement()) {
            Auditor auditor = new Auditor(connection);
            assertThat(auditor.look(Term.END)).isEmpty();
            statement.execute("drop trigger signoff_answers_immutable");
            assertThat(statement.executeUpdate("delete from signoff_answers")).isPositive();
            List<String> found = new ArrayList<>();
            for (int act = 0; act < 10; act++) {
                found.addAll(auditor.look(Term.END));
            }
            assertThat(found).anySatisfy(one -> assertThat(one).startsWith("signoff_answers has lost"));
        }
    }
}
