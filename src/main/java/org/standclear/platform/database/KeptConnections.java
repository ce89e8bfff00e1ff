package org.standclear.platform.database;

import com.zaxxer.hikari.HikariDataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.core.PriorityOrdered;
import org.springframework.stereotype.Component;

/**
 * Keeps the pool's connections to an embedded H2 for as long as the process lives.
 *
 * <p>H2 2.4 evaluates a check such as {@code kind in ('A', 'B')} in the session that created the table. Once the pool has
 * retired the connection that ran the migrations, every write that such a check guards fails. There is no server that
 * could drop a connection to an embedded database, so nothing is lost by keeping them.
 */
@Component
final class KeptConnections implements BeanPostProcessor, PriorityOrdered {

    private static final String EMBEDDED = "jdbc:h2:";
    private static final long FOR_EVER = 0;

    @Override
    public @Nullable Object postProcessAfterInitialization(Object bean, String beanName) {
        if (bean instanceof HikariDataSource pool && isEmbedded(pool.getJdbcUrl())) {
            pool.setMaxLifetime(FOR_EVER);
        }
        return bean;
    }

    /** Before the pool disappears behind what else is put around it. */
    @Override
    public int getOrder() {
        return HIGHEST_PRECEDENCE;
    }

    private static boolean isEmbedded(@Nullable String url) {
        return url != null && url.startsWith(EMBEDDED);
    }
}
