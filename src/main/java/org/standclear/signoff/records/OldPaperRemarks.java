package org.standclear.signoff.records;

import java.time.Clock;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.Concern;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueFrom;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;

/** What cards from paper say went on; who was there, what was loaded and what was read stays. */
@Component
class OldPaperRemarks extends DisposableRows {

    private final JdbcClient jdbc;
    private final Clock clock;

    OldPaperRemarks(JdbcClient jdbc, BookingConcerns concerns, Clock clock) {
        super(
                RecordKind.PAPER_REMARKS,
                new DueRows(
                        jdbc, new DueFrom("p.id", "p.written_at", """
                p.operator_id as person, '' as kept_back,
                concat('card from paper of ', (select c.name from cells c where c.id = p.cell_id)) as said""", """
                signoff_paper_cards p where p.happened <> '' and p.words_out_at is null"""), card -> concerns(jdbc, concerns, card)));
        this.jdbc = jdbc;
        this.clock = clock;
    }

    private static Set<Concern> concerns(JdbcClient jdbc, BookingConcerns bookings, UUID card) {
        Set<Concern> concerns = bookings.ofRow("signoff_paper_cards", card);
        jdbc.sql("""
                select attendant_id from signoff_paper_cards where id = :id
                union select releaser_id from signoff_paper_cards where id = :id
                union select typed_by from signoff_paper_cards where id = :id""")
                .param("id", card)
                .query(UUID.class)
                .list()
                .forEach(person -> concerns.add(Concern.person(person)));
        return concerns;
    }

    @Override
    public boolean dispose(UUID id) {
        return jdbc.sql("""
                update signoff_paper_cards set happened = :gone, words_out_at = :at
                where id = :id and words_out_at is null""")
                        .param("gone", GONE)
                        .param("at", SqlTime.toSql(clock.instant()))
                        .param("id", id)
                        .update()
                == 1;
    }
}
