package org.standclear.people.leaving;

import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueFrom;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;

/** Puts a pseudonym in the place of a name. The row stays, so that everything that refers to it still counts. */
@Component
class LeftAccounts extends DisposableRows {

    private static final int CODE = 8;

    private final JdbcClient jdbc;
    private final Clock clock;

    LeftAccounts(JdbcClient jdbc, Clock clock) {
        super(RecordKind.ACCOUNTS, new DueRows(jdbc, new DueFrom("p.id", "p.closed_at", """
                p.id as person, '' as kept_back, concat(p.printed_name, ' (', p.login, ')') as said""", """
                people p where not p.active and p.pseudonym_since is null""")));
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Override
    public boolean dispose(UUID id) {
        // from chance, not from the id or the name: nobody can work it out again
        String code = Sha256.of(UUID.randomUUID().toString()).substring(0, CODE);
        String name = "Person " + code.toUpperCase(Locale.ROOT) + " (left)";
        int changed = jdbc.sql("""
                update people set login = :login, printed_name = :name, sort_name = :sort, password_hash = 'none',
                    must_change_password = false, pin_hash = null, pseudonym_since = :at, version = version + 1
                where id = :id and not active and pseudonym_since is null""")
                .param("login", "left-" + code)
                .param("name", name)
                .param("sort", name.toLowerCase(Locale.ROOT))
                .param("at", SqlTime.toSql(clock.instant()))
                .param("id", id)
                .update();
        for (String table : List.of("personal_tokens", "accommodations")) {
            jdbc.sql("delete from " + table + " where person_id = :id and exists "
                            + "(select 1 from people p where p.id = :id and p.pseudonym_since is not null)")
                    .param("id", id)
                    .update();
        }
        return changed == 1;
    }
}
