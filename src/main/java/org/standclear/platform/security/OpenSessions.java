package org.standclear.platform.security;

import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The sessions that people have open, on whichever instance. */
@Repository
public class OpenSessions {

    private final JdbcClient jdbc;

    OpenSessions(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Ends all sessions of an account when the running transaction commits. */
    public void endAll(String login) {
        jdbc.sql("delete from spring_session where principal_name = :login")
                .param("login", login)
                .update();
    }

    /** The sign-in names that have a session open, on whichever instance. */
    public List<String> logins() {
        return jdbc.sql("select distinct principal_name from spring_session where principal_name is not null")
                .query(String.class)
                .list();
    }
}
