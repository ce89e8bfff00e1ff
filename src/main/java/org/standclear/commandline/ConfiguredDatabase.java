package org.standclear.commandline;

import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.config.ConfigDataEnvironmentPostProcessor;
import org.springframework.core.env.ConfigurableEnvironment;
import org.springframework.core.env.StandardEnvironment;
import org.springframework.jdbc.datasource.DriverManagerDataSource;

/** The database of the web application, found the way the web application finds it. */
record ConfiguredDatabase(String url, String user, String password) {

    /** From the settings files, the environment and the system properties. */
    static ConfiguredDatabase found() {
        ConfigurableEnvironment settings = new StandardEnvironment();
        ConfigDataEnvironmentPostProcessor.applyTo(settings);
        return new ConfiguredDatabase(
                settings.getProperty("spring.datasource.url", ""),
                settings.getProperty("spring.datasource.username", ""),
                settings.getProperty("spring.datasource.password", ""));
    }

    /** The same, with what was given on the command line in the place of what was found. */
    ConfiguredDatabase with(@Nullable String otherUrl, @Nullable String otherUser, @Nullable String otherPassword) {
        return new ConfiguredDatabase(
                otherUrl == null ? url : otherUrl,
                otherUser == null ? user : otherUser,
                otherPassword == null ? password : otherPassword);
    }

    DataSource open() {
        return new DriverManagerDataSource(existing(), user, password);
    }

    /** H2 makes a database that is not there; a verify must not. */
    private String existing() {
        return url.startsWith("jdbc:h2:")
                        && !url.toUpperCase(java.util.Locale.ROOT).contains(";IFEXISTS=")
                ? url + ";IFEXISTS=TRUE"
                : url;
    }
}
