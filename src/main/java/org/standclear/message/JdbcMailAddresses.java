package org.standclear.message;

import java.sql.Time;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;
import org.standclear.message.Messages.Wishes;
import org.standclear.people.MailAddresses;
import org.standclear.platform.database.TableStatistics;
import org.standclear.platform.ids.PersonId;

/** Addresses that somebody else knows, kept among the wishes of people who have said nothing yet. */
@Component
class JdbcMailAddresses implements MailAddresses {

    private static final int BATCH = 1000;
    private static final String KEEP = """
            insert into message_settings (person_id, address, mail_on, quiet_from, quiet_until)
            select p.id, cast(? as varchar(254)), true, cast(? as time), cast(? as time) from people p
            where p.id = ? and not exists (select 1 from message_settings s where s.person_id = p.id)""";

    private final JdbcTemplate jdbc;
    private final TableStatistics statistics;

    JdbcMailAddresses(JdbcTemplate jdbc, TableStatistics statistics) {
        this.jdbc = jdbc;
        this.statistics = statistics;
    }

    @Override
    public boolean usable(String address) {
        return JdbcMessages.isAddress(address);
    }

    @Override
    public Set<PersonId> known() {
        return jdbc
                .query(
                        "select person_id from message_settings",
                        (row, number) -> new PersonId(row.getObject("person_id", UUID.class)))
                .stream()
                .collect(Collectors.toSet());
    }

    @Override
    public void keep(Map<PersonId, String> addresses) {
        List<Map.Entry<PersonId, String>> all = List.copyOf(addresses.entrySet());
        int first = Math.min(BATCH, all.size());
        each(KEEP, all.subList(0, first));
        if (all.size() > first) {
            // planned for the few rows that there were, each of many would read all that came before it
            statistics.lookAgain(List.of("message_settings"));
            each(KEEP, all.subList(first, all.size()));
        }
    }

    @Override
    public void forget(Map<PersonId, String> addresses) {
        each("""
                delete from message_settings where address = ? and mail_on and quiet_from = ? and quiet_until = ?
                and person_id = ?""", List.copyOf(addresses.entrySet()));
    }

    private void each(String sql, List<Map.Entry<PersonId, String>> addresses) {
        jdbc.batchUpdate(sql, addresses, BATCH, (statement, one) -> {
            Wishes plain = Wishes.plain(one.getValue());
            statement.setString(1, plain.address());
            statement.setTime(2, Time.valueOf(plain.quietFrom()));
            statement.setTime(3, Time.valueOf(plain.quietUntil()));
            statement.setObject(4, one.getKey().value());
        });
    }
}
