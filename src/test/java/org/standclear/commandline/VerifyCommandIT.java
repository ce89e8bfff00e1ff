package org.standclear.commandline;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.standclear.testing.RealPostgres;
import org.standclear.testing.TestDatabase;

class VerifyCommandIT {

    private static final String ZEROS = "0".repeat(64);

    /** How a command ended and what it printed. */
    record Ended(int status, String out, String err) {}

    private static Ended run(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int status = Commands.run(new PrintWriter(out), new PrintWriter(err), arguments);
        return new Ended(status, out.toString(), err.toString());
    }

    abstract static class Cases {

        @TempDir
        Path folder;

        abstract TestDatabase fresh();

        abstract String vendor();

        private DriverManagerDataSource migrated(TestDatabase database) {
            var source = new DriverManagerDataSource(database.url(), database.user(), database.password());
            Flyway.configure()
                    .dataSource(source)
                    .locations("classpath:db/migration/common", "classpath:db/migration/" + vendor())
                    .load()
                    .migrate();
            return source;
        }

        private Ended verify(TestDatabase database, String... more) throws IOException {
            Path password = Files.writeString(folder.resolve("password"), database.password() + "\n");
            String[] arguments = {
                "verify", "--url", database.url(), "--user", database.user(), "--password-file", password.toString()
            };
            String[] all = java.util.Arrays.copyOf(arguments, arguments.length + more.length);
            System.arraycopy(more, 0, all, arguments.length, more.length);
            return run(all);
        }

        @Test
        void saysThatAWholeRecordIsWhole() throws IOException {
            TestDatabase database = fresh();
            migrated(database);

            Ended ended = verify(database);
            assertThat(ended.status()).isZero();
            assertThat(ended.out()).startsWith("whole: 0 entries, last hash " + ZEROS + " (Your college, Robot lab)");
            assertThat(verify(database, "--kept", "3:" + "a".repeat(64)))
                    .satisfies(cutOff -> assertThat(cutOff.status()).isEqualTo(1))
                    .satisfies(cutOff -> assertThat(cutOff.out()).contains("There is no entry 3"));
        }

        @Test
        void namesTheFirstBrokenEntry() throws IOException {
            TestDatabase database = fresh();
            JdbcClient.create(migrated(database))
                    .sql(
                            "insert into trail_entries (lab, sequence, at, kind, subject, words, facts, previous_hash, hash)"
                                    + " select id, 1, current_timestamp, 'test.forged', 'x', 'Forged.', '{}', '" + ZEROS
                                    + "', '" + ZEROS + "' from labs")
                    .update();

            Ended ended = verify(database);
            assertThat(ended.status()).isEqualTo(1);
            assertThat(ended.out()).startsWith("broken at entry 1: Entry 1 was changed");
        }
    }

    @Nested
    class OnH2 extends Cases {
        @Override
        TestDatabase fresh() {
            return TestDatabase.freshH2();
        }

        @Override
        String vendor() {
            return "h2";
        }
    }

    @Nested
    class OnPostgres extends Cases {
        @Override
        TestDatabase fresh() {
            return RealPostgres.freshDatabase();
        }

        @Override
        String vendor() {
            return "postgresql";
        }
    }

    @Test
    void makesNoDatabaseWhereThereIsNone(@TempDir Path folder) {
        Ended ended = run("verify", "--url", "jdbc:h2:file:" + folder.resolve("none"));

        assertThat(ended.status()).isEqualTo(64);
        assertThat(ended.err()).contains("No record can be read at jdbc:h2:file:");
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void refusesWrongUsage(@TempDir Path folder) {
        assertThat(run("verify", "--kept", "3").status()).isEqualTo(64);
        assertThat(run("verify", "--password-file", folder.resolve("none").toString()))
                .satisfies(ended -> assertThat(ended.status()).isEqualTo(64))
                .satisfies(ended -> assertThat(ended.err()).contains("cannot be read"));
        assertThat(run("verify", "--colour").status()).isEqualTo(64);
        assertThat(run("verifi").status()).isEqualTo(64);
        assertThat(run("verify", "--help").out()).contains("Exit status: 0 whole");
    }

    @Test
    void tellsCommandsFromSettingsOfTheApplication() {
        assertThat(Commands.areMeantBy("verify", "--url", "x")).isTrue();
        assertThat(Commands.areMeantBy("verifi")).isTrue();
        assertThat(Commands.areMeantBy("--help")).isTrue();
        assertThat(Commands.areMeantBy("--server.port=8081")).isFalse();
        assertThat(Commands.areMeantBy()).isFalse();
    }
}
