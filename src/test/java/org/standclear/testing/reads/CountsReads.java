package org.standclear.testing.reads;

import jakarta.servlet.Filter;
import javax.sql.DataSource;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.core.Ordered;
import org.springframework.jdbc.datasource.DelegatingDataSource;

/** Lets a test ask {@link RowsRead} what the requests that it sends make the database read. */
@TestConfiguration(proxyBeanMethods = false)
public class CountsReads {

    @Bean
    static RowsRead rowsRead() {
        return new RowsRead();
    }

    @Bean
    static BeanPostProcessor countedDataSource(RowsRead reads) {
        return new BeanPostProcessor() {
            @Override
            public Object postProcessAfterInitialization(Object bean, String name) {
                return bean instanceof DataSource source ? counted(source, reads) : bean;
            }
        };
    }

    private static DataSource counted(DataSource source, RowsRead reads) {
        return new DelegatingDataSource(source) {
            @Override
            public java.sql.Connection getConnection() throws java.sql.SQLException {
                return CountedConnection.of(super.getConnection(), reads);
            }
        };
    }

    /** Requests only: what the application does by itself beside them is not counted. */
    @Bean
    FilterRegistrationBean<Filter> countedRequests(RowsRead reads) {
        var filter = new FilterRegistrationBean<Filter>((request, response, chain) -> {
            reads.enter();
            try {
                chain.doFilter(request, response);
            } finally {
                reads.leave();
            }
        });
        filter.setOrder(Ordered.HIGHEST_PRECEDENCE);
        return filter;
    }
}
