package org.standclear.trail;

import com.zaxxer.hikari.HikariDataSource;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.flywaydb.core.Flyway;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.JdbcTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.platform.ids.LabId;
import org.standclear.testing.RealPostgres;
import org.standclear.testing.TestDatabase;

/** A migrated database and one instance of the trail on it, wired as the application wires it. */
final class TrailDatabase implements AutoCloseable {

    static final Instant NOON = Instant.parse("2026-03-11T12:00:00Z");

    final TestDatabase database;
    final JdbcTemplate sql;
    final JdbcTransactionManager manager;
    final TransactionTemplate transaction;
    final Trail trail;
    final TrailReader reader;
    private final HikariDataSource connections = new HikariDataSource();
    private final boolean h2;

    private TrailDatabase(TestDatabase database, boolean h2) {
        this.database = database;
        this.h2 = h2;
        connections.setJdbcUrl(database.url());
        connections.setUsername(database.user());
        connections.setPassword(database.password());
        connections.setMaximumPoolSize(16);
        sql = new JdbcTemplate(connections);
        OpenTransactions open = new OpenTransactions(new ChainWriter(sql));
        manager = new JdbcTransactionManager(connections);
        manager.setTransactionExecutionListeners(List.of(open));
        transaction = new TransactionTemplate(manager);
        trail = new JdbcTrail(open, sql, Clock.fixed(NOON, ZoneOffset.UTC));
        reader = new JdbcTrailReader(JdbcClient.create(sql));
    }

    static TrailDatabase onH2() {
        return migrated(new TrailDatabase(TestDatabase.freshH2(), true), "h2");
    }

    static TrailDatabase onPostgres() {
        return migrated(new TrailDatabase(RealPostgres.freshDatabase(), false), "postgresql");
    }

    private static TrailDatabase migrated(TrailDatabase fresh, String vendor) {
        Flyway.configure()
                .dataSource(fresh.connections)
                .locations("classpath:db/migration/common", "classpath:db/migration/" + vendor)
                .load()
                .migrate();
        return fresh;
    }

    /** A second instance of the application on the same database. */
    TrailDatabase secondInstance() {
        return new TrailDatabase(database, h2);
    }

    LabId newLab() {
        LabId lab = LabId.next();
        sql.update("""
                insert into labs (id, college, room, name, zone, emergency_number, first_aider, stop_map)
                values (?, 'Quillhaven', 'T 114', 'Bench', 'UTC', '0', '-', '-')""", lab.value());
        return lab;
    }

    /** A lab with so many entries, one transaction each. */
    LabId labWithEntries(int count) {
        LabId lab = newLab();
        for (int i = 1; i <= count; i++) {
            append(lab, "entry " + i);
        }
        return lab;
    }

    void append(LabId lab, String words) {
        transaction.executeWithoutResult(status -> trail.append(
                TrailEntry.of(lab, "test.done", "thing-1", null, words).with("n", words.length())));
    }

    /** What somebody with the rights of the database's owner can do: take the guards off. */
    void takeTheGuardsOff() {
        if (h2) {
            sql.execute("drop trigger trail_entries_no_change");
            sql.execute("drop trigger trail_heads_forward_only");
            sql.execute("set referential_integrity false");
        } else {
            sql.execute("alter table trail_entries disable trigger all");
            sql.execute("alter table trail_heads disable trigger all");
        }
    }

    @Override
    public void close() {
        connections.close();
    }
}
