package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.testing.OnH2;

/** What a quota reads are the operator's own bookings; H2 follows one index only and once took that of the lab. */
@OnH2
class QuotaReadsIT {

    @Autowired
    JdbcClient jdbc;

    @Autowired
    LabTime labTime;

    @ParameterizedTest
    @ValueSource(strings = {"select * from bookings where " + BookingRows.FROM_ON, BookingRows.BEFORE_FOR_ASSIGNMENT})
    void followTheIndexOfTheOperator(String sql) {
        String plan = jdbc.sql("explain " + sql)
                .param("lab", UUID.randomUUID())
                .param("operator", UUID.randomUUID())
                .param("assignment", UUID.randomUUID())
                .param("from", SqlTime.toSql(labTime.now()))
                .param("farthest", SqlTime.toSql(labTime.now()))
                .query(String.class)
                .single();

        assertThat(plan).containsIgnoringCase("bookings_operator_ix");
    }
}
