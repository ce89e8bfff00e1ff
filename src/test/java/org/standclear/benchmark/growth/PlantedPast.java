package org.standclear.benchmark.growth;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.benchmark.growth.Past.Grounds;
import org.standclear.benchmark.growth.PastTurn.Bench;
import org.standclear.benchmark.growth.PastTurn.Work;
import org.standclear.platform.time.SqlTime;
import org.standclear.testing.TestDatabase;

/**
 * Writes a past into the database of a demo college that does not run at the moment. All keys, checks and refusals of the
 * schema stay on. Entries of the record are there in number, but not chained by their hashes: verifying is not measured.
 */
final class PlantedPast {

    private static final int CHUNK = 20_000;

    /** Of the record, for each booking. */
    private static final long ENTRIES = 4;

    /** What is planted before a term that is there has ids of its own. */
    private static final int FURTHER_IDS = 500_000_000;

    private static final String TURNS = """
            create table past_turns (n integer not null primary key, digits varchar(12) not null, booking uuid not null,
                lab uuid not null, cell uuid not null, cell_version integer not null,
                starts_at timestamp with time zone not null, ends_at timestamp with time zone not null,
                operator uuid not null, attendant uuid not null, releaser uuid not null, course uuid not null,
                assignment uuid not null, revision uuid not null, answer uuid not null, state varchar(20) not null,
                ran boolean not null)""";
    private static final String TURN =
            "insert into past_turns values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;
    private final TransactionTemplate together;
    private final int idsFrom;

    private PlantedPast(DataSource connection, int there) {
        batches = new JdbcTemplate(connection);
        together = new TransactionTemplate(new DataSourceTransactionManager(connection));
        idsFrom = there == 0 ? 0 : FURTHER_IDS;
        jdbc = JdbcClient.create(batches);
    }

    /** Plants so many bookings before the first that the demo has, and lets the database look at what it has got. */
    static void into(TestDatabase database, int size) {
        into(database, size, 0);
    }

    /** Plants what lies before the latest thousand of so many, where those are planted already. */
    static void before(TestDatabase database, int size) {
        into(database, size, Past.TERM);
    }

    private static void into(TestDatabase database, int size, int there) {
        SingleConnectionDataSource connection =
                new SingleConnectionDataSource(database.url(), database.user(), database.password(), true);
        try {
            new PlantedPast(connection, there).plant(size, there, database.url());
        } finally {
            connection.destroy();
        }
    }

    private void plant(int size, int there, String url) {
        Past past = past(size);
        if (isPostgresql(url)) {
            // nothing of this has to outlive a crash
            batches.execute("set synchronous_commit = off");
        }
        batches.execute(TURNS);
        formerStudents(past);
        int planted = size - there;
        List<String> statements = statements();
        for (int after = 0; after < planted; after += CHUNK) {
            int until = Math.min(planted, after + CHUNK);
            turns(past, after, until);
            for (String statement : statements) {
                if (statement.contains(":head")) {
                    entries(statement, past.grounds().lab(), after, until);
                } else {
                    jdbc.sql(statement)
                            .param("after", after)
                            .param("until", until)
                            .update();
                }
            }
        }
        batches.execute("drop table past_turns");
        batches.execute(isPostgresql(url) ? "vacuum analyze" : "analyze");
    }

    /** Behind what the lab's record has by then, which may go on meanwhile: with its head locked. */
    private void entries(String statement, UUID lab, int after, int until) {
        together.executeWithoutResult(status -> {
            long head = jdbc.sql("select sequence from trail_heads where lab = :lab for update")
                    .param("lab", lab)
                    .query(Long.class)
                    .single();
            jdbc.sql(statement)
                    .param("after", after)
                    .param("until", until)
                    .param("head", head - ENTRIES * after)
                    .update();
            jdbc.sql("update trail_heads set sequence = :last, hash = repeat('e', 64) where lab = :lab")
                    .param("last", head + ENTRIES * (until - after))
                    .param("lab", lab)
                    .update();
        });
    }

    private static boolean isPostgresql(String url) {
        return url.startsWith("jdbc:postgresql");
    }

    private static List<String> statements() {
        try (InputStream file = PlantedPast.class.getResourceAsStream("/benchmark/past.sql")) {
            String all = new String(Objects.requireNonNull(file).readAllBytes(), StandardCharsets.UTF_8);
            return Stream.of(all.split(";\n")).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Past past(int size) {
        UUID lab = only("select id from labs order by id fetch first row only");
        List<Bench> benches = jdbc.sql("""
                select id, current_version, start_offset_minutes from cells where lab_id = :lab order by name""")
                .param("lab", lab)
                .query((row, number) -> new Bench(
                        row.getObject("id", UUID.class),
                        row.getInt("current_version"),
                        row.getInt("start_offset_minutes")))
                .list();
        List<UUID> students = jdbc.sql("""
                select distinct p.id, p.login from people p join enrolments e on e.person_id = p.id order by p.login""")
                .query((row, number) -> row.getObject("id", UUID.class))
                .list();
        Work work = new Work(
                only("select course_id from assignments order by id fetch first row only"),
                only("select id from assignments order by id fetch first row only"),
                only("select revision_id from check_answers order by answered_at, id fetch first row only"),
                only("select id from check_answers order by answered_at, id fetch first row only"));
        Instant until = jdbc.sql("""
                select min(starts_at) as earliest from bookings where cast(id as varchar(36)) not like '000000c0-%'""")
                .query((row, number) -> SqlTime.read(row, "earliest"))
                .single();
        UUID releaser = only("select id from people where login = 'adaeze'");
        return new Past(new Grounds(lab, benches, students, releaser, work), until, size);
    }

    private UUID only(String sql) {
        return jdbc.sql(sql).query(UUID.class).single();
    }

    /** Accounts that are closed, with authorisations that have run out; a roster has taken them off their sections. */
    private void formerStudents(Past past) {
        int many = past.formerStudents();
        if (many == 0) {
            return;
        }
        List<Integer> numbers = IntStream.range(0, many).boxed().toList();
        batches.batchUpdate("""
                insert into people (id, login, printed_name, sort_name, password_hash, must_change_password, active, version,
                    created_at, closed_at)
                values (?, ?, ?, ?, '{never}', false, false, 2, timestamp with time zone '2010-01-01 00:00:00+00',
                    current_timestamp)""", numbers, 1000, (row, number) -> {
            row.setObject(1, Past.formerStudent(number));
            row.setString(2, "former" + number);
            row.setString(3, "Former " + number);
            row.setString(4, "former " + number);
        });
        batches.batchUpdate(
                "insert into person_roles (person_id, lab_id, role) values (?, ?, 'STUDENT')",
                numbers,
                1000,
                (row, number) -> {
                    row.setObject(1, Past.formerStudent(number));
                    row.setObject(2, past.grounds().lab());
                });
        for (String duty : List.of("OPERATOR", "ATTENDANT")) {
            batches.batchUpdate("""
                    insert into authorisations (id, person_id, duty, valid_from, valid_until, granted_by, granted_at, reason,
                        lab_id)
                    values (?, ?, ?, timestamp with time zone '2010-01-01 00:00:00+00',
                        timestamp with time zone '2010-06-01 00:00:00+00', ?,
                        timestamp with time zone '2010-01-01 00:00:00+00', 'induction', ?)""", numbers, 1000, (row, number) -> {
                row.setObject(1, UUID.randomUUID());
                row.setObject(2, Past.formerStudent(number));
                row.setString(3, duty);
                row.setObject(4, past.grounds().releaser());
                row.setObject(5, past.grounds().lab());
            });
        }
    }

    private void turns(Past past, int after, int until) {
        List<PastTurn> turns =
                IntStream.rangeClosed(after + 1, until).mapToObj(past::turn).toList();
        batches.batchUpdate(TURN, turns, 1000, (row, turn) -> bind(row, past.grounds(), idsFrom, turn));
    }

    private static void bind(PreparedStatement row, Grounds grounds, int idsFrom, PastTurn turn) throws SQLException {
        String digits = String.format("%012d", idsFrom + turn.number());
        row.setInt(1, turn.number());
        row.setString(2, digits);
        row.setObject(3, UUID.fromString("000000c0-0000-7000-8000-" + digits));
        row.setObject(4, grounds.lab());
        row.setObject(5, turn.bench().cell());
        row.setInt(6, turn.bench().version());
        row.setObject(7, SqlTime.toSql(turn.start()));
        row.setObject(8, SqlTime.toSql(turn.end()));
        row.setObject(9, turn.operator());
        row.setObject(10, turn.attendant());
        row.setObject(11, grounds.releaser());
        row.setObject(12, turn.work().course());
        row.setObject(13, turn.work().assignment());
        row.setObject(14, turn.work().revision());
        row.setObject(15, turn.work().answer());
        row.setString(16, turn.state());
        row.setBoolean(17, turn.ran());
    }
}
