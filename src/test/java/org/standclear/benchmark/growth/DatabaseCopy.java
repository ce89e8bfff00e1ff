package org.standclear.benchmark.growth;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.standclear.testing.TestDatabase;

/** A database beside another that nobody uses at the moment, with the same in it; goes with the other's engine. */
final class DatabaseCopy {

    private static final String POSTGRESQL = "/postgres?";

    private DatabaseCopy() {}

    static TestDatabase of(TestDatabase original, int number) throws IOException {
        String name = "copy" + number;
        String url = original.url();
        if (url.contains(POSTGRESQL)) {
            String apart = url.replace(POSTGRESQL, "/template1?");
            new JdbcTemplate(new DriverManagerDataSource(apart, original.user(), original.password()))
                    .execute("create database " + name + " template postgres");
            return new TestDatabase(url.replace(POSTGRESQL, "/" + name + "?"), original.user(), original.password());
        }
        Path file = Path.of(url.replaceFirst("^jdbc:h2:file:", "").replaceFirst(";.*", ""));
        Files.copy(Path.of(file + ".mv.db"), file.resolveSibling(name + ".mv.db"));
        return new TestDatabase(
                url.replace(file.toString(), file.resolveSibling(name).toString()),
                original.user(),
                original.password());
    }
}
