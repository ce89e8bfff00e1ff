package org.standclear.platform.forms;

import java.time.Clock;
import java.time.Duration;
import org.springframework.context.annotation.Configuration;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.EnableScheduling;
import org.springframework.scheduling.annotation.Scheduled;
import org.standclear.platform.time.SqlTime;

/** Forgets the tokens of forms that acted long ago: the session that such a form needs has ended since. */
@Configuration(proxyBeanMethods = false)
@EnableScheduling
class UsedTokens {

    private static final Duration KEPT = Duration.ofDays(7);

    private final JdbcClient jdbc;
    private final Clock clock;

    UsedTokens(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Scheduled(initialDelayString = "PT10M", fixedDelayString = "PT6H")
    void forgetOldOnes() {
        jdbc.sql("delete from form_tokens where used_at < :old")
                .param("old", SqlTime.toSql(clock.instant().minus(KEPT)))
                .update();
    }
}
