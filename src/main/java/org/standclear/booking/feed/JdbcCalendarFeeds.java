package org.standclear.booking.feed;

import java.security.SecureRandom;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.CellNames;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Feeds in the database, and the calendars behind them. */
@Service
@Transactional
class JdbcCalendarFeeds implements CalendarFeeds {

    private static final int SECRET_BYTES = 32;
    private static final Duration BACK = Duration.ofDays(60);

    private final JdbcClient jdbc;
    private final FeedEvents events;
    private final CellNames cells;
    private final Trail trail;
    private final Labs labs;
    private final Clock clock;
    private final SecureRandom random = new SecureRandom();

    JdbcCalendarFeeds(JdbcClient jdbc, FeedEvents events, CellNames cells, Trail trail, Labs labs, Clock clock) {
        this.jdbc = jdbc;
        this.events = events;
        this.cells = cells;
        this.trail = trail;
        this.labs = labs;
        this.clock = clock;
    }

    @Override
    public Made makeForPerson(PersonId owner) {
        return make(Kind.PERSON, owner.value(), owner);
    }

    @Override
    public Made makeForCell(CellId cell, PersonId owner) {
        return make(Kind.CELL, cell.value(), owner);
    }

    @Override
    public Made makeForLab(PersonId owner) {
        return make(Kind.LAB, null, owner);
    }

    private Made make(Kind kind, @Nullable UUID subject, PersonId owner) {
        byte[] bytes = new byte[SECRET_BYTES];
        random.nextBytes(bytes);
        String secret = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
        Feed feed = new Feed(Id.newValue(), kind, subject, owner, SqlTime.stored(clock.instant()));
        jdbc.sql("""
                insert into booking_feeds (id, lab_id, kind, subject, secret_sha256, owner_id, made_at)
                values (:id, :lab, :kind, :subject, :secret, :owner, :at)""")
                .param("id", feed.id())
                .param("lab", labs.theLab().id().value())
                .param("kind", kind.name())
                .param("subject", subject)
                .param("secret", Sha256.of(secret))
                .param("owner", owner.value())
                .param("at", SqlTime.toSql(feed.madeAt()))
                .update();
        tell("booking.feed-made", feed.id(), owner, "Made a calendar address");
        return new Made(feed, secret);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Feed> of(PersonId owner) {
        return jdbc.sql("select * from booking_feeds where owner_id = :owner and revoked_at is null "
                        + "and (lab_id = :lab or kind = 'PERSON') "
                        + "order by made_at desc, id desc")
                .param("owner", owner.value())
                .param("lab", labs.theLab().id().value())
                .query(JdbcCalendarFeeds::feed)
                .list();
    }

    @Override
    public boolean revoke(UUID feed, PersonId owner) {
        boolean revoked = jdbc.sql("""
                update booking_feeds set revoked_at = :at
                where id = :id and owner_id = :owner and revoked_at is null""")
                        .param("at", SqlTime.toSql(clock.instant()))
                        .param("id", feed)
                        .param("owner", owner.value())
                        .update()
                == 1;
        if (revoked) {
            tell("booking.feed-revoked", feed, owner, "Revoked a calendar address");
        }
        return revoked;
    }

    /** Whoever lost the account lost the calendar too; the lab's and a cell's are for whoever is its staff now, at each fetch. */
    @Override
    @Transactional(readOnly = true)
    public Optional<String> calendar(String secret) {
        return jdbc.sql("""
                select f.* from booking_feeds f join people p on p.id = f.owner_id
                where f.secret_sha256 = :secret and f.revoked_at is null and p.active
                  and (f.kind = 'PERSON' or exists (select 1 from person_roles r where r.person_id = p.id
                       and r.lab_id = f.lab_id and r.role in ('TECHNICIAN', 'INSTRUCTOR')))""")
                .param("secret", Sha256.of(secret))
                .query((row, number) -> new OfLab(new LabId(row.getObject("lab_id", UUID.class)), feed(row, number)))
                .optional()
                .map(found -> LabScope.in(found.lab(), () -> text(found.feed())));
    }

    private record OfLab(LabId lab, Feed feed) {}

    private String text(Feed feed) {
        Instant since = clock.instant().minus(BACK);
        String lab = labs.theLab().name();
        UUID subject = feed.subject();
        if (feed.kind() == Kind.PERSON) {
            // with the bookings of every lab of the person, wherever the address was made
            return CalendarText.of(
                    labs.areSeveral() ? "Your bookings" : "Your bookings, " + lab,
                    events.ofPerson(feed.owner(), since));
        }
        if (subject == null) {
            return CalendarText.of(lab, events.ofLab(feed.id(), labs.theLab().id(), since));
        }
        CellId cell = new CellId(subject);
        return CalendarText.of(
                cells.all().getOrDefault(cell, "A cell") + ", " + lab, events.ofCell(feed.id(), cell, since));
    }

    private void tell(String kind, UUID feed, PersonId by, String words) {
        trail.append(TrailEntry.of(labs.theLab().id(), kind, feed, by, words));
    }

    private static Feed feed(ResultSet row, int number) throws SQLException {
        return new Feed(
                row.getObject("id", UUID.class),
                Kind.valueOf(row.getString("kind")),
                row.getObject("subject", UUID.class),
                new PersonId(row.getObject("owner_id", UUID.class)),
                SqlTime.read(row, "made_at"));
    }
}
