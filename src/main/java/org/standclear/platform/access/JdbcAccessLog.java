package org.standclear.platform.access;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Looks in the database, each inserted by itself: the page is shown after them, or not at all. */
@Repository
class JdbcAccessLog implements AccessLog {

    /** In the place of a person, for a list of many: a null would not be unique. */
    private static final String MANY = "";

    private static final String NOBODY = "-";

    private final JdbcClient jdbc;
    private final Labs labs;
    private final Clock clock;

    JdbcAccessLog(JdbcClient jdbc, Labs labs, Clock clock) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.clock = clock;
    }

    @Override
    public void looked(PersonId by, Sight sight, String subject, Collection<PersonId> whose) {
        Set<String> named = new LinkedHashSet<>();
        whose.stream().filter(one -> !one.equals(by)).forEach(one -> named.add(one.toString()));
        if (whose.isEmpty()) {
            named.add(NOBODY);
        }
        keep(by, sight, subject, named);
    }

    @Override
    public void lookedAtMany(PersonId by, Sight sight, String subject) {
        keep(by, sight, subject, new LinkedHashSet<>(Set.of(MANY)));
    }

    private void keep(PersonId by, Sight sight, String subject, Set<String> named) {
        Instant now = SqlTime.stored(clock.instant());
        Instant hour = now.truncatedTo(ChronoUnit.HOURS);
        if (!named.isEmpty()) {
            named.removeAll(kept(by, sight, subject, hour));
        }
        named.forEach(one -> insert(by, sight, subject, one, hour, now));
    }

    private List<String> kept(PersonId by, Sight sight, String subject, Instant hour) {
        return jdbc.sql("""
                select whose from platform_looks
                where viewer = :by and sight = :sight and subject = :subject and hour_at = :hour""")
                .param("by", by.value())
                .param("sight", sight.name())
                .param("subject", subject)
                .param("hour", SqlTime.toSql(hour))
                .query(String.class)
                .list();
    }

    private void insert(PersonId by, Sight sight, String subject, String whose, Instant hour, Instant now) {
        try {
            jdbc.sql("""
                    insert into platform_looks (id, lab_id, viewer, whose, sight, subject, hour_at, seen_at)
                    values (:id, :lab, :by, :whose, :sight, :subject, :hour, :now)""")
                    .param("id", Id.newValue())
                    .param("lab", labs.theLab().id().value())
                    .param("by", by.value())
                    .param("whose", whose)
                    .param("sight", sight.name())
                    .param("subject", subject)
                    .param("hour", SqlTime.toSql(hour))
                    .param("now", SqlTime.toSql(now))
                    .update();
        } catch (DuplicateKeyException twin) {
            // the same page, opened twice at the same moment: the look is kept
        }
    }

    @Override
    public List<Look> at(PersonId whose, int atMost) {
        return jdbc.sql("""
                select * from platform_looks where (whose = :whose or (whose = '' and lab_id = :lab))
                and viewer <> :person order by seen_at desc, id desc fetch first :most rows only""")
                .param("whose", whose.toString())
                .param("lab", labs.theLab().id().value())
                .param("person", whose.value())
                .param("most", atMost)
                .query(JdbcAccessLog::look)
                .list();
    }

    @Override
    public List<Look> latest(@Nullable PersonId viewer, @Nullable PersonId whose, @Nullable Look after, int atMost) {
        StringBuilder sql = new StringBuilder("select * from platform_looks where lab_id = :lab");
        sql.append(viewer == null ? "" : " and viewer = :viewer");
        sql.append(whose == null ? "" : " and whose = :whose");
        sql.append(after == null ? "" : " and (seen_at < :at or seen_at = :at and id < :id)");
        sql.append(" order by seen_at desc, id desc fetch first :most rows only");
        var query = jdbc.sql(sql.toString())
                .param("lab", labs.theLab().id().value())
                .param("most", atMost);
        query = viewer == null ? query : query.param("viewer", viewer.value());
        query = whose == null ? query : query.param("whose", whose.toString());
        if (after != null) {
            query = query.param("at", SqlTime.toSql(after.at())).param("id", after.id());
        }
        return query.query(JdbcAccessLog::look).list();
    }

    private static Look look(ResultSet row, int number) throws SQLException {
        String whose = row.getString("whose");
        return new Look(
                row.getObject("id", UUID.class),
                new PersonId(row.getObject("viewer", UUID.class)),
                whose.equals(MANY) || whose.equals(NOBODY) ? null : PersonId.of(whose),
                Sight.valueOf(row.getString("sight")),
                row.getString("subject"),
                SqlTime.read(row, "seen_at"));
    }
}
