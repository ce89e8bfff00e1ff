package org.standclear.people.tokens;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.people.PersonalTokens.PersonalToken;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** The table of personal tokens. */
@Repository
class TokenRows {

    /** A use is written down once in this time, so that a folder of homework is not a write for each file. */
    private static final Duration MARKED = Duration.ofMinutes(1);

    private final JdbcClient jdbc;

    TokenRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A token with what is compared. */
    record Stored(PersonalToken token, PersonId person, String secretSha256) {}

    void add(PersonId person, PersonalToken token, String secretSha256) {
        jdbc.sql("""
                insert into personal_tokens (id, person_id, name, prefix, secret_sha256, created_at, expires_at)
                values (:id, :person, :name, :prefix, :secret, :created, :expires)""")
                .param("id", token.id())
                .param("person", person.value())
                .param("name", token.name())
                .param("prefix", token.prefix())
                .param("secret", secretSha256)
                .param("created", SqlTime.toSql(token.createdAt()))
                .param("expires", SqlTime.toSql(token.expiresAt()))
                .update();
    }

    Optional<Stored> byPrefix(String prefix) {
        return jdbc.sql("select * from personal_tokens where prefix = :prefix")
                .param("prefix", prefix)
                .query((row, number) -> new Stored(
                        token(row, number),
                        new PersonId(row.getObject("person_id", UUID.class)),
                        row.getString("secret_sha256")))
                .optional();
    }

    List<PersonalToken> of(PersonId person) {
        return jdbc.sql("select * from personal_tokens where person_id = :person order by created_at desc, id desc")
                .param("person", person.value())
                .query(TokenRows::token)
                .list();
    }

    boolean revoke(PersonId person, UUID token, Instant at) {
        return jdbc.sql("""
                update personal_tokens set revoked_at = :at
                where id = :id and person_id = :person and revoked_at is null""")
                        .param("at", SqlTime.toSql(at))
                        .param("id", token)
                        .param("person", person.value())
                        .update()
                == 1;
    }

    void used(UUID token, Instant at) {
        jdbc.sql("""
                update personal_tokens set last_used_at = :at
                where id = :id and (last_used_at is null or last_used_at < :before)""")
                .param("at", SqlTime.toSql(at))
                .param("id", token)
                .param("before", SqlTime.toSql(at.minus(MARKED)))
                .update();
    }

    private static PersonalToken token(ResultSet row, int number) throws SQLException {
        return new PersonalToken(
                row.getObject("id", UUID.class),
                row.getString("name"),
                row.getString("prefix"),
                SqlTime.read(row, "created_at"),
                SqlTime.read(row, "expires_at"),
                SqlTime.readNullable(row, "last_used_at"),
                SqlTime.readNullable(row, "revoked_at"));
    }
}
