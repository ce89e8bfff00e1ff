package org.standclear.people.accounts;

import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.Person;
import org.standclear.people.ScreenPlaces;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.CellNames;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.SqlTime;

/** Places bench screens under the row lock of their account. */
@Service
class JdbcScreenPlaces implements ScreenPlaces {

    private final JdbcClient jdbc;
    private final AccountRows accounts;
    private final AccountRecord record;
    private final CellNames cells;
    private final Clock clock;

    JdbcScreenPlaces(JdbcClient jdbc, AccountRows accounts, AccountRecord record, CellNames cells, Clock clock) {
        this.jdbc = jdbc;
        this.accounts = accounts;
        this.record = record;
        this.cells = cells;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<CellId> cellOf(PersonId account) {
        return jdbc.sql("""
                select s.cell_id from bench_screens s
                join person_roles r on r.person_id = s.person_id and r.role = 'BENCH' where s.person_id = :screen""")
                .param("screen", account.value())
                .query(UUID.class)
                .optional()
                .map(CellId::new);
    }

    @Override
    @Transactional
    public Outcome place(PersonId id, @Nullable CellId cell, PersonId by) {
        Person screen = accounts.lock(id).person();
        if (!screen.is(Role.BENCH)) {
            return new Outcome.Refused("cell", "Only a bench screen stands at a cell for good.");
        }
        Map<CellId, String> names = cells.all();
        if (cell != null && !names.containsKey(cell)) {
            return new Outcome.Refused("cell", "Choose one of the lab's cells, or any cell.");
        }
        if (cellOf(id).equals(Optional.ofNullable(cell))) {
            return new Outcome.Done();
        }
        jdbc.sql("delete from bench_screens where person_id = :screen")
                .param("screen", id.value())
                .update();
        if (cell != null) {
            insert(id, cell, by);
        }
        record.placed(screen, cell == null ? "any cell" : names.getOrDefault(cell, "a cell"), by);
        return new Outcome.Done();
    }

    private void insert(PersonId screen, CellId cell, PersonId by) {
        jdbc.sql("""
                insert into bench_screens (person_id, cell_id, placed_by, placed_at)
                values (:screen, :cell, :by, :at)""")
                .param("screen", screen.value())
                .param("cell", cell.value())
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .update();
    }
}
