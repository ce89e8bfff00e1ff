package org.standclear.message;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
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

    /**
     * An e-mail to send.
     *
     * @param lab its name; times are by the clock of its zone
     * @param notBefore when the person's quiet hours end, if they are now; otherwise now
     */
    record Due(
            UUID id,
            String lab,
            String zone,
            String address,
            String subject,
            List<String> lines,
            String href,
            int attempts,
            Instant made,
            Instant notBefore) {}

    /** Says that nothing is sent to whoever has no address or wants nothing any more. */
    public void dropUnwanted(Instant now) {
        jdbc.sql("""
                update messages set mail_state = 'OFF'
                where mail_state = 'WAITING' and (claimed_until is null or claimed_until < :now) and not exists
                    (select 1 from message_settings s where s.person_id = messages.person_id and s.mail_on)""").param("now", SqlTime.toSql(now)).update();
    }

    /** Says that what would come too late is not sent any more. */
    public void dropTooLate(Instant now) {
        jdbc.sql("""
                update messages set mail_state = 'TOO_LATE'
                where mail_state = 'WAITING' and mail_until < :now and (claimed_until is null or claimed_until < :now)""").param("now", SqlTime.toSql(now)).update();
    }

    /**
     * Claims the next one that is due. Somebody's letters leave one after the other in the order in which they were written:
     * when one is due, the oldest that still waits goes first, and while one is under way the others wait.
     */
    public Optional<Due> claim(String instance, Instant now) {
        return jdbc.sql("""
                select person_id, lab_id from messages
                where mail_state = 'WAITING' and next_try_at <= :now and (claimed_until is null or claimed_until < :now)
                    and not exists (select 1 from messages u where u.person_id = messages.person_id
                        and u.mail_state = 'WAITING' and u.lab_id = messages.lab_id and u.claimed_until >= :now)
                order by next_try_at, id fetch first row only for update skip locked""")
                .param("now", SqlTime.toSql(now))
                .query((row, number) ->
                        new Box(row.getObject("person_id", UUID.class), row.getObject("lab_id", UUID.class)))
                .optional()
                .flatMap(this::oldest)
                .filter(letter ->
                        letter.claimedUntil() == null || letter.claimedUntil().isBefore(now))
                .flatMap(letter -> claim(letter.id(), instance, now));
    }

    /** Whose letters, and of which lab. */
    private record Box(UUID person, UUID lab) {}

    private record Oldest(UUID id, @Nullable Instant claimedUntil) {}

    /** Waits where another instance is claiming it, so that what it says is what holds. */
    private Optional<Oldest> oldest(Box box) {
        return jdbc.sql("""
                select id, claimed_until from messages
                where person_id = :person and lab_id = :lab and mail_state = 'WAITING'
                order by created_at, id fetch first row only for update""")
                .param("person", box.person())
                .param("lab", box.lab())
                .query((row, number) ->
                        new Oldest(row.getObject("id", UUID.class), SqlTime.readNullable(row, "claimed_until")))
                .optional();
    }

    private Optional<Due> claim(UUID id, String instance, Instant now) {
        jdbc.sql("update messages set claimed_by = :by, claimed_until = :until, attempts = attempts + 1 where id = :id")
                .param("by", instance)
                .param("until", SqlTime.toSql(now.plus(CLAIM)))
                .param("id", id)
                .update();
        return jdbc.sql("""
                select m.*, s.address, s.quiet_from, s.quiet_until, l.name as lab, l.zone from messages m
                join message_settings s on s.person_id = m.person_id join labs l on l.id = m.lab_id
                where m.id = :id""")
                .param("id", id)
                .query((row, number) -> due(row, now))
                .optional();
    }

    private static Due due(ResultSet row, Instant now) throws SQLException {
        QuietHours quiet = new QuietHours(
                row.getObject("quiet_from", LocalTime.class),
                row.getObject("quiet_until", LocalTime.class),
                ZoneId.of(row.getString("zone")));
        return new Due(
                row.getObject("id", UUID.class),
                row.getString("lab"),
                row.getString("zone").replace('_', ' '),
                row.getString("address"),
                row.getString("subject"),
                row.getString("body").lines().toList(),
                row.getString("href"),
                row.getInt("attempts"),
                SqlTime.read(row, "created_at"),
                quiet.earliest(now));
    }

    /** The person does not want it now: it waits, and so does what else waits for the person, and no try is counted. */
    public void waitForQuiet(Due due, String instance) {
        int mine = jdbc.sql("""
                update messages set claimed_by = null, claimed_until = null, attempts = attempts - 1
                where id = :id and claimed_by = :by""").param("id", due.id()).param("by", instance).update();
        if (mine == 1) {
            holdBack(due.id(), due.notBefore());
        }
    }

    /** Nothing that waits for the same person goes before then, or what is due there would ask for this letter again. */
    private void holdBack(UUID id, Instant until) {
        jdbc.sql("""
                update messages set next_try_at = :next where mail_state = 'WAITING' and next_try_at < :next
                and exists (select 1 from messages d where d.id = :id and d.person_id = messages.person_id
                    and d.lab_id = messages.lab_id)""").param("next", SqlTime.toSql(until)).param("id", id).update();
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

    /** It did not leave and is tried again, and what waits for the same person after it. */
    public void failed(UUID id, String instance, Instant nextTry, String error) {
        int mine = jdbc.sql("""
                update messages set next_try_at = :next, claimed_by = null, claimed_until = null, last_error = :error
                where id = :id and claimed_by = :by""")
                .param("next", SqlTime.toSql(nextTry))
                .param("error", cut(error))
                .param("id", id)
                .param("by", instance)
                .update();
        if (mine == 1) {
            holdBack(id, nextTry);
        }
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
