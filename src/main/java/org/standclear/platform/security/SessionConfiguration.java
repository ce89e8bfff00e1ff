package org.standclear.platform.security;

import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.session.config.SessionRepositoryCustomizer;
import org.springframework.session.jdbc.JdbcIndexedSessionRepository;

/** Sessions in the database, so that any number of instances serve the same people. */
@Configuration(proxyBeanMethods = false)
class SessionConfiguration {

    private static final String INTO =
            " into %TABLE_NAME%_attributes (session_primary_id, attribute_name, attribute_bytes) ";

    /** Two tabs that store the same attribute at once both get their page: the later one counts. */
    @Bean
    SessionRepositoryCustomizer<JdbcIndexedSessionRepository> laterAttributeCounts(JdbcConnectionDetails database) {
        // by its address: a connection is not there yet while the migrations run
        String upsert = database.getJdbcUrl().startsWith("jdbc:h2:")
                ? "merge" + INTO + "key (session_primary_id, attribute_name) values (?, ?, ?)"
                : "insert" + INTO + "values (?, ?, ?) on conflict (session_primary_id, attribute_name)"
                        + " do update set attribute_bytes = excluded.attribute_bytes";
        return repository -> repository.setCreateSessionAttributeQuery(upsert);
    }
}
