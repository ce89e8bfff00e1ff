package org.standclear.people.duties;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.people.Authorisation;
import org.standclear.people.AuthorisationRegister.Granted;
import org.standclear.people.Duty;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** Reads rows of authorisations. */
final class GrantedRows {

    static final String SELECT = "select id, person_id, duty, cell_id, valid_from, valid_until, granted_by, reason,"
            + " revoked_by, revoked_at, revoke_reason from authorisations";

    private GrantedRows() {}

    static Granted granted(ResultSet row, int number) throws SQLException {
        @Nullable UUID cell = row.getObject("cell_id", UUID.class);
        @Nullable UUID revoker = row.getObject("revoked_by", UUID.class);
        return new Granted(
                row.getObject("id", UUID.class),
                new Authorisation(
                        new PersonId(row.getObject("person_id", UUID.class)),
                        Duty.valueOf(row.getString("duty")),
                        cell == null ? null : new CellId(cell),
                        SqlTime.read(row, "valid_from"),
                        end(row),
                        new PersonId(row.getObject("granted_by", UUID.class))),
                row.getString("reason"),
                revoker == null ? null : new PersonId(revoker),
                row.getString("revoke_reason"));
    }

    private static Instant end(ResultSet row) throws SQLException {
        Instant until = SqlTime.read(row, "valid_until");
        @Nullable Instant revoked = SqlTime.readNullable(row, "revoked_at");
        return revoked != null && revoked.isBefore(until) ? revoked : until;
    }
}
