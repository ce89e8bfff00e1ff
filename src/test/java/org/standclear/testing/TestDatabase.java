package org.standclear.testing;

import java.util.UUID;

/** Where an empty database for one test context is, and how to sign in to it. */
public record TestDatabase(String url, String user, String password) {

    /** Makes a new empty in-memory H2 database. */
    public static TestDatabase freshH2() {
        return new TestDatabase(
                "jdbc:h2:mem:" + UUID.randomUUID() + ";DB_CLOSE_DELAY=-1;QUERY_CACHE_SIZE=512", "sa", "");
    }

    /** The Spring Boot properties that point an application at this database. */
    public String[] asProperties() {
        return new String[] {
            "spring.datasource.url=" + url,
            "spring.datasource.username=" + user,
            "spring.datasource.password=" + password
        };
    }
}
