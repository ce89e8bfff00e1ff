package org.standclear.signoff.records;

import java.time.Clock;
import java.time.Duration;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.KeepsBack;
import org.standclear.platform.retention.OnDemand;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;

/** The text of a program stays while a booking of the last year, or one ahead, names it, or it was signed off or ran there. */
@Component
class BookedTexts implements KeepsBack {

    private static final Duration YEAR = Duration.ofDays(366);

    private final JdbcClient jdbc;
    private final Clock clock;

    BookedTexts(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Override
    public Reasons now() {
        OnDemand booked = new OnDemand(() -> jdbc.sql("""
                select r.content_id from bookings b join program_revisions r on r.id = b.revision_id
                    where b.ends_at > :since
                union select r.content_id from signoff_sheets s join bookings b on b.id = s.booking_id
                    join program_revisions r on r.id = s.revision_id where b.ends_at > :since
                union select r.content_id from runs x join bookings b on b.id = x.booking_id
                    join program_revisions r on r.id = x.revision_id where b.ends_at > :since""")
                .param("since", SqlTime.toSql(clock.instant().minus(YEAR)))
                .query(UUID.class)
                .list());
        return (kind, record) -> kind == RecordKind.PROGRAMS && booked.contains(record.id())
                ? "a booking of the last year names it, or it was signed off or ran in one"
                : "";
    }
}
