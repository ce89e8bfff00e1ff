package org.standclear.architecture.planted.web;

import java.sql.Connection;
import java.sql.SQLException;
import org.springframework.web.bind.annotation.GetMapping;

/** A public page class that talks SQL; it carries no stereotype, so the application never starts it. */
public final class PublicPages {

    private final Connection connection;

    /** Takes a connection, which no page may. */
    public PublicPages(Connection connection) {
        this.connection = connection;
    }

    /** A handler that asks the database by itself. */
    @GetMapping("/planted")
    public String page() throws SQLException {
        return connection.getCatalog();
    }
}
