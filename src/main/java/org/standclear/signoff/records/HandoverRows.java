package org.standclear.signoff.records;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;
import org.standclear.signoff.Release;
import org.standclear.signoff.rules.Lapses;

/** Who left the e-stop of a release, why, and who signed for it next. */
@Repository
class HandoverRows {

    private final JdbcClient jdbc;
    private final ReleaseRows releases;

    HandoverRows(JdbcClient jdbc, ReleaseRows releases) {
        this.jdbc = jdbc;
        this.releases = releases;
    }

    /** The booking's release that waits for another attendant's signature. */
    Optional<Release> suspended(BookingId booking) {
        return releases.latest(booking).filter(release -> release.waits() && !release.holds());
    }

    /** False when it is suspended already, used or lapsed. */
    boolean suspend(Release release, Lapses.Found found, Instant at) {
        boolean now = jdbc.sql("""
                update signoff_releases set live = null, suspended_because = :because
                where id = :id and live = 1 and used_at is null and lapsed_at is null""")
                        .param("because", found.because())
                        .param("id", release.id().value())
                        .update()
                == 1;
        if (now) {
            left(release, found, at);
        }
        return now;
    }

    /** The attendant of the release is no longer at its e-stop. */
    void left(Release release, Lapses.Found found, Instant at) {
        jdbc.sql("""
                insert into signoff_handovers (id, release_id, booking_id, from_person, code, because, left_at)
                values (:id, :release, :booking, :from, :code, :because, :at)""")
                .param("id", Id.newValue())
                .param("release", release.id().value())
                .param("booking", release.booking().value())
                .param("from", release.attendant().value())
                .param("code", found.rule().code())
                .param("because", found.because())
                .param("at", SqlTime.toSql(at))
                .update();
    }

    /** The next attendant has signed: the release holds again, or goes on, with them. */
    void taken(Release release, UUID sheet, PersonId next, Instant at) {
        jdbc.sql("""
                update signoff_handovers set sheet_id = :sheet, to_person = :next, signed_at = :at
                where release_id = :release and to_person is null""")
                .param("sheet", sheet)
                .param("next", next.value())
                .param("at", SqlTime.toSql(at))
                .param("release", release.id().value())
                .update();
        int changed = jdbc.sql("""
                update signoff_releases set live = 1, suspended_because = null, attendant_id = :next
                where id = :id and lapsed_at is null and (used_at is null or live = 1)""")
                .param("next", next.value())
                .param("id", release.id().value())
                .update();
        if (changed != 1) {
            throw new IllegalStateException("release " + release.id() + " ended although its booking was locked");
        }
    }
}
