package org.standclear.benchmark;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Instant;
import java.util.UUID;
import javax.sql.DataSource;
import org.standclear.booking.Slot;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** What a booking stores, inserted by plain JDBC in one transaction without asking or locking anything. */
final class PlainInserts {

    private static final String BOOKING = "insert into bookings (id, lab_id, cell_id, starts_at, ends_at, operator_id,"
            + " attendant_id, state, outside_quota, made_by, made_at, version)"
            + " values (?, ?, ?, ?, ?, ?, ?, 'BOOKED', false, ?, ?, 1)";
    private static final String CLAIM = "insert into booking_claims (id, booking_id, kind, subject, starts_at, ends_at)"
            + " values (?, ?, ?, ?, ?, ?)";
    private static final String ENTRY =
            "insert into plain_entries (lab, sequence, at, kind, subject, actor, words, facts,"
                    + " previous_hash, hash) values (?, ?, ?, 'booking.made', ?, ?, ?, ?, ?, ?)";
    private static final String HASH = "0".repeat(64);

    private final DataSource dataSource;
    private final UUID lab;
    private final String facts;

    /** Makes the table that takes the entries: those of the record can be neither removed nor written out of order. */
    PlainInserts(DataSource dataSource, UUID lab, String facts) throws SQLException {
        this.dataSource = dataSource;
        this.lab = lab;
        this.facts = facts;
        try (Connection connection = dataSource.getConnection();
                var statement = connection.createStatement()) {
            statement.execute("create table plain_entries as select * from trail_entries where 1 = 0");
            statement.execute("alter table plain_entries alter column lab set not null");
            statement.execute("alter table plain_entries alter column sequence set not null");
            statement.execute("alter table plain_entries add constraint plain_entries_pk primary key (lab, sequence)");
        }
    }

    boolean insert(Slot slot, PersonId operator, PersonId attendant, long sequence) throws SQLException {
        try (Connection connection = dataSource.getConnection()) {
            connection.setAutoCommit(false);
            UUID id = Id.newValue();
            insertBooking(connection, id, slot, operator, attendant);
            try (PreparedStatement claim = connection.prepareStatement(CLAIM)) {
                insertClaim(claim, id, "CELL", slot.cell().value(), slot);
                insertClaim(claim, id, "OPERATOR", operator.value(), slot);
                insertClaim(claim, id, "ATTENDANT", attendant.value(), slot);
            }
            insertEntry(connection, id, operator, sequence);
            connection.commit();
            connection.setAutoCommit(true);
        }
        return true;
    }

    private void insertBooking(Connection connection, UUID id, Slot slot, PersonId operator, PersonId attendant)
            throws SQLException {
        try (PreparedStatement booking = connection.prepareStatement(BOOKING)) {
            booking.setObject(1, id);
            booking.setObject(2, lab);
            booking.setObject(3, slot.cell().value());
            booking.setObject(4, SqlTime.toSql(slot.start()));
            booking.setObject(5, SqlTime.toSql(slot.end()));
            booking.setObject(6, operator.value());
            booking.setObject(7, attendant.value());
            booking.setObject(8, operator.value());
            booking.setObject(9, SqlTime.toSql(slot.start()));
            booking.executeUpdate();
        }
    }

    private static void insertClaim(PreparedStatement claim, UUID booking, String kind, UUID subject, Slot slot)
            throws SQLException {
        claim.setObject(1, Id.newValue());
        claim.setObject(2, booking);
        claim.setString(3, kind);
        claim.setObject(4, subject);
        claim.setObject(5, SqlTime.toSql(slot.start()));
        claim.setObject(6, SqlTime.toSql(slot.end()));
        claim.executeUpdate();
    }

    private void insertEntry(Connection connection, UUID id, PersonId operator, long sequence) throws SQLException {
        try (PreparedStatement entry = connection.prepareStatement(ENTRY)) {
            entry.setObject(1, lab);
            entry.setLong(2, sequence);
            entry.setObject(3, SqlTime.toSql(Instant.EPOCH));
            entry.setString(4, id.toString());
            entry.setObject(5, operator.value());
            entry.setString(6, "booked");
            entry.setString(7, facts);
            entry.setString(8, HASH);
            entry.setString(9, HASH);
            entry.executeUpdate();
        }
    }
}
