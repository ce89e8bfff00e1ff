package org.standclear.testing;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.datasource.DriverManagerDataSource;

/** Tests that ask in few statements count their own: rounds ask beside them all the time. */
class StatementCountTests {

    private final JdbcTemplate jdbc = new JdbcTemplate(new DriverManagerDataSource("jdbc:h2:mem:"));

    @Test
    void countsWhatTheActAsksAndNothingBesideIt() throws Exception {
        int counted = StatementCount.of(() -> {
            Thread round = new Thread(this::ask);
            round.start();
            round.join();
            ask();
            ask();
        });
        assertThat(counted).isEqualTo(2);
    }

    private void ask() {
        jdbc.queryForList("select 1 where 1 = ?", 1);
    }
}
