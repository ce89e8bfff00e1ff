package org.standclear.message;

import java.sql.Time;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.message.Messages.Wishes;
import org.standclear.people.MailAddresses;
import org.standclear.platform.database.TableStatistics;
import org.standclear.platform.ids.PersonId;

/** Addresses that somebody else knows, kept among the wishes of people who have said nothing yet. */
@Component
class JdbcMailAddresses implements MailAddresses {

    private static final int BATCH = 1000;
    private static final String WITHOUT = """
            select p.id from people p
            where p.id in (:people) and not exists (select 1 from message_settings s where s.person_id = p.id)""";
    private static final String KEEP = """
            insert into message_settings (address, quiet_from, quiet_until, person_id, mail_on)
            values (?, ?, ?, ?, true)""";

    private final JdbcTemplate jdbc;
    private final JdbcClient client;
    private final TableStatistics statistics;

    JdbcMailAddresses(JdbcTemplate jdbc, JdbcClient client, TableStatistics statistics) {
        this.jdbc = jdbc;
        this.client = client;
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
        for (int from = 0; from < all.size(); from += BATCH) {
            keep(all.subList(from, Math.min(from + BATCH, all.size())));
            if (from == 0 && all.size() > BATCH) {
                // planned for the few rows that there were, the next question would read all that came before it
                statistics.lookAgain(List.of("message_settings"));
            }
        }
    }

    private void keep(List<Map.Entry<PersonId, String>> addresses) {
        Set<UUID> without = Set.copyOf(client.sql(WITHOUT)
                .param(
                        "people",
                        addresses.stream().map(one -> one.getKey().value()).toList())
                .query(UUID.class)
                .list());
        each(
                KEEP,
                addresses.stream()
                        .filter(one -> without.contains(one.getKey().value()))
                        .toList());
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
