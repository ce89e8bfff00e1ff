package org.standclear.message;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.time.SqlTime;

/**
 * The outbox: each e-mail is claimed by one instance for a while, sent, and marked. Claims are short transactions of their
 * own, so that no database connection waits for the mail server.
 */
@Repository
@Transactional
class OutboxRows {

    /** Longer than the mail server may take for one letter; after it, an instance that died is not waited for. */
    static final Duration CLAIM = Duration.ofMinutes(5);

    private static final int LONGEST_ERROR = 400;

    private final JdbcClient jdbc;

    OutboxRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** An e-mail to send. */
    record Due(UUID id, String address, String subject, List<String> lines, String href, int attempts, Instant made) {}

    /** Says that what would come too late is not sent any more. */
    public void dropTooLate(Instant now) {
        jdbc.sql("""
                update messages set mail_state = 'TOO_LATE'
                where mail_state = 'WAITING' and mail_until < :now and (claimed_until is null or claimed_until < :now)""").param("now", SqlTime.toSql(now)).update();
    }

    /** Claims the next one that is due and that nobody else has claimed. */
    public Optional<Due> claim(String instance, Instant now) {
        Optional<UUID> id =
                jdbc.sql("""
                select id from messages
                where mail_state = 'WAITING' and next_try_at <= :now and (claimed_until is null or claimed_until < :now)
                order by next_try_at, id fetch first row only for update skip locked""").param("now", SqlTime.toSql(now)).query(UUID.class).optional();
        id.ifPresent(one -> jdbc.sql(
                        "update messages set claimed_by = :by, claimed_until = :until, attempts = attempts + 1 where id = :id")
                .param("by", instance)
                .param("until", SqlTime.toSql(now.plus(CLAIM)))
                .param("id", one)
                .update());
        return id.flatMap(this::due);
    }

    private Optional<Due> due(UUID id) {
        return jdbc.sql("""
                select m.*, s.address from messages m join message_settings s on s.person_id = m.person_id
                where m.id = :id""")
                .param("id", id)
                .query((row, number) -> new Due(
                        row.getObject("id", UUID.class),
                        row.getString("address"),
                        row.getString("subject"),
                        row.getString("body").lines().toList(),
                        row.getString("href"),
                        row.getInt("attempts"),
                        SqlTime.read(row, "created_at")))
                .optional();
    }

    /** It has left; only the instance whose claim still stands may say so. */
    public void sent(UUID id, String instance, Instant at) {
        jdbc.sql("""
                update messages set mail_state = 'SENT', sent_at = :at, claimed_by = null, claimed_until = null,
                    last_error = null
                where id = :id and claimed_by = :by""")
                .param("at", SqlTime.toSql(at))
                .param("id", id)
                .param("by", instance)
                .update();
    }

    /** It did not leave and is tried again. */
    public void failed(UUID id, String instance, Instant nextTry, String error) {
        jdbc.sql("""
                update messages set next_try_at = :next, claimed_by = null, claimed_until = null, last_error = :error
                where id = :id and claimed_by = :by""")
                .param("next", SqlTime.toSql(nextTry))
                .param("error", cut(error))
                .param("id", id)
                .param("by", instance)
                .update();
    }

    /** The server will never take it. */
    public void refused(UUID id, String instance, String error) {
        jdbc.sql("""
                update messages set mail_state = 'REFUSED', claimed_by = null, claimed_until = null, last_error = :error
                where id = :id and claimed_by = :by""")
                .param("error", cut(error))
                .param("id", id)
                .param("by", instance)
                .update();
    }

    private static String cut(String error) {
        return org.standclear.platform.text.PlainText.mended(error, LONGEST_ERROR);
    }
}
