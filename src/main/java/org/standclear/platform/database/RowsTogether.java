package org.standclear.platform.database;

import com.zaxxer.hikari.HikariDataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.core.PriorityOrdered;
import org.springframework.stereotype.Component;

/**
 * Lets the driver of PostgreSQL send the rows of a batch of inserts as few statements of many rows, so that the server does
 * not begin anew for each. Said here and not in the address, which every lab writes for itself.
 */
@Component
final class RowsTogether implements BeanPostProcessor, PriorityOrdered {

    private static final String SERVER = "jdbc:postgresql:";
    private static final String SETTING = "reWriteBatchedInserts";

    @Override
    public @Nullable Object postProcessAfterInitialization(Object bean, String beanName) {
        if (bean instanceof HikariDataSource pool && isServer(pool.getJdbcUrl())) {
            pool.addDataSourceProperty(SETTING, "true");
        }
        return bean;
    }

    /** Before the pool disappears behind what else is put around it. */
    @Override
    public int getOrder() {
        return HIGHEST_PRECEDENCE;
    }

    private static boolean isServer(@Nullable String url) {
        return url != null && url.startsWith(SERVER);
    }
}
