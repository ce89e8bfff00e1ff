package org.standclear.message;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.message.Messages.Kept;
import org.standclear.message.Messages.Standing;
import org.standclear.message.Messages.Wishes;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Messages and wishes as the tables have them. */
@Repository
class MessageRows {

    private final JdbcClient jdbc;
    private final Labs labs;

    MessageRows(JdbcClient jdbc, Labs labs) {
        this.jdbc = jdbc;
        this.labs = labs;
    }

    /** What is known when a message is kept, beside the message. */
    record Outgoing(UUID id, LabId lab, Instant at, boolean byMail, Instant notBefore, Instant until) {}

    /** Keeps it unless its key was told before. */
    void insert(Message message, Outgoing out) {
        jdbc.sql("""
                insert into messages (id, lab_id, person_id, kind, subject, body, href, once_key, created_at, mail_state,
                    mail_until, attempts, next_try_at)
                select cast(:id as uuid), cast(:lab as uuid), cast(:person as uuid), :kind, :subject, :body, :href,
                    cast(:key as varchar(120)), cast(:at as timestamp with time zone), :state,
                    cast(:until as timestamp with time zone), 0, cast(:next as timestamp with time zone)
                where not exists (select 1 from messages where once_key = cast(:key as varchar(120)))""")
                .param("id", out.id())
                .param("lab", out.lab().value())
                .param("person", message.to().value())
                .param("kind", message.kind())
                .param("subject", message.subject())
                .param("body", String.join("\n", message.lines()))
                .param("href", message.href())
                .param("key", message.onceKey())
                .param("at", SqlTime.toSql(out.at()))
                .param("state", out.byMail() ? "WAITING" : "OFF")
                .param("until", SqlTime.toSql(out.until()))
                .param("next", SqlTime.toSql(out.notBefore()))
                .update();
    }

    List<Kept> of(PersonId person, int atMost) {
        return jdbc.sql("select * from messages where person_id = :person order by created_at desc, id desc "
                        + "fetch first :most rows only")
                .param("person", person.value())
                .param("most", atMost)
                .query(MessageRows::kept)
                .list();
    }

    List<Kept> before(PersonId person, UUID message, int atMost) {
        return jdbc.sql("select m.* from messages m join messages x on x.id = :message and x.person_id = :person "
                        + "where m.person_id = :person and (m.created_at < x.created_at "
                        + "or (m.created_at = x.created_at and m.id < x.id)) "
                        + "order by m.created_at desc, m.id desc fetch first :most rows only")
                .param("person", person.value())
                .param("message", message)
                .param("most", atMost)
                .query(MessageRows::kept)
                .list();
    }

    int unreadOf(PersonId person) {
        return jdbc.sql("select count(*) from messages where person_id = :person and read_at is null")
                .param("person", person.value())
                .query(Integer.class)
                .single();
    }

    void read(PersonId person, List<UUID> shown, Instant at) {
        if (shown.isEmpty()) {
            return;
        }
        jdbc.sql("update messages set read_at = :at where person_id = :person and read_at is null and id in (:shown)")
                .param("at", SqlTime.toSql(at))
                .param("shown", shown)
                .param("person", person.value())
                .update();
    }

    Optional<Wishes> wishesOf(PersonId person) {
        return jdbc.sql("select * from message_settings where person_id = :person")
                .param("person", person.value())
                .query((row, number) -> new Wishes(
                        row.getString("address"),
                        row.getBoolean("mail_on"),
                        row.getObject("quiet_from", LocalTime.class),
                        row.getObject("quiet_until", LocalTime.class)))
                .optional();
    }

    void keep(PersonId person, Wishes wishes) {
        int changed = bind("""
                update message_settings set address = :address, mail_on = :on, quiet_from = :from, quiet_until = :until
                where person_id = :person""", person, wishes);
        if (changed == 0) {
            bind("""
                    insert into message_settings (person_id, address, mail_on, quiet_from, quiet_until)
                    values (:person, :address, :on, :from, :until)""", person, wishes);
        }
    }

    private int bind(String sql, PersonId person, Wishes wishes) {
        return jdbc.sql(sql)
                .param("person", person.value())
                .param("address", wishes.address())
                .param("on", wishes.on())
                .param("from", wishes.quietFrom())
                .param("until", wishes.quietUntil())
                .update();
    }

    /** Who switches e-mail off wants none of what still waits. */
    void stopWaiting(PersonId person) {
        jdbc.sql("update messages set mail_state = 'OFF' where person_id = :person and mail_state = 'WAITING'")
                .param("person", person.value())
                .update();
    }

    List<Standing> standing(Instant since) {
        return jdbc.sql("""
                select mail_state, count(*) as many, min(created_at) as oldest, max(last_error) as error
                from messages where lab_id = :lab and created_at >= :since and mail_state <> 'OFF' group by mail_state order by mail_state""")
                .param("since", SqlTime.toSql(since))
                .param("lab", labs.theLab().id().value())
                .query((row, number) -> new Standing(
                        row.getString("mail_state"),
                        row.getInt("many"),
                        SqlTime.read(row, "oldest"),
                        row.getString("error")))
                .list();
    }

    private static Kept kept(ResultSet row, int number) throws SQLException {
        return new Kept(
                row.getObject("id", UUID.class),
                new LabId(row.getObject("lab_id", UUID.class)),
                row.getString("subject"),
                row.getString("body").lines().toList(),
                row.getString("href"),
                SqlTime.read(row, "created_at"),
                SqlTime.readNullable(row, "read_at"),
                mail(row.getString("mail_state"), row.getString("last_error")));
    }

    private static String mail(String state, @Nullable String error) {
        return switch (state) {
            case "SENT" -> "sent by e-mail";
            case "WAITING" -> error == null ? "e-mail waits to be sent" : "e-mail is tried again";
            case "REFUSED" -> "the mail server refused the address";
            case "TOO_LATE" -> "no e-mail: it would have come too late";
            default -> "";
        };
    }
}
