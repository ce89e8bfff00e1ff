package org.standclear.benchmark;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.UUID;
import javax.sql.DataSource;
import org.standclear.booking.Slot;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/**
 * What a booking stores, inserted by plain JDBC in one transaction without asking any rule: the booking, its three claims
 * and, if wanted, its entry in the lab's record, which the database takes only in order and so under the record's one lock.
 */
final class PlainInserts {

    private static final String BOOKING = "insert into bookings (id, lab_id, cell_id, starts_at, ends_at, operator_id,"
            + " attendant_id, state, outside_quota, made_by, made_at, version)"
            + " values (?, ?, ?, ?, ?, ?, ?, 'BOOKED', false, ?, ?, 1)";
    private static final String CLAIM = "insert into booking_claims (id, booking_id, kind, subject, starts_at, ends_at)"
            + " values (?, ?, ?, ?, ?, ?)";
    private static final String HEAD = "select sequence from trail_heads where lab = ? for update";
    private static final String ENTRY =
            "insert into trail_entries (lab, sequence, at, kind, subject, actor, words, facts,"
                    + " previous_hash, hash) values (?, ?, ?, 'booking.made', ?, ?, ?, ?, ?, ?)";
    private static final String NEXT_HEAD = "update trail_heads set sequence = ?, hash = ? where lab = ?";
    private static final String HASH = "0".repeat(64);

    private final DataSource dataSource;
    private final UUID lab;
    private final String facts;

    /** Takes what an entry of the record holds beside its ids, to write as many bytes as the service does. */
    PlainInserts(DataSource dataSource, UUID lab, String facts) {
        this.dataSource = dataSource;
        this.lab = lab;
        this.facts = facts;
    }

    boolean insert(Slot slot, PersonId operator, PersonId attendant, boolean withRecord) throws SQLException {
        try (Connection connection = dataSource.getConnection()) {
            connection.setAutoCommit(false);
            UUID id = Id.newValue();
            insertBooking(connection, id, slot, operator, attendant);
            try (PreparedStatement claim = connection.prepareStatement(CLAIM)) {
                insertClaim(claim, id, "CELL", slot.cell().value(), slot);
                insertClaim(claim, id, "OPERATOR", operator.value(), slot);
                insertClaim(claim, id, "ATTENDANT", attendant.value(), slot);
            }
            if (withRecord) {
                long sequence = lockHead(connection) + 1;
                insertEntry(connection, id, operator, sequence);
                moveHead(connection, sequence);
            }
            connection.commit();
            connection.setAutoCommit(true);
        }
        return true;
    }

    private long lockHead(Connection connection) throws SQLException {
        try (PreparedStatement head = connection.prepareStatement(HEAD)) {
            head.setObject(1, lab);
            try (ResultSet row = head.executeQuery()) {
                row.next();
                return row.getLong(1);
            }
        }
    }

    private void moveHead(Connection connection, long sequence) throws SQLException {
        try (PreparedStatement head = connection.prepareStatement(NEXT_HEAD)) {
            head.setLong(1, sequence);
            head.setString(2, HASH);
            head.setObject(3, lab);
            head.executeUpdate();
        }
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
