package org.standclear.cell;

import java.util.Arrays;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.CellId;

/** Compares numbers of rows, never their times. */
@Repository
class JdbcCellHistory implements CellHistory {

    private static final List<String> STOPPING = Arrays.stream(CellTag.Kind.values())
            .filter(CellTag.Kind::stops)
            .map(CellTag.Kind::name)
            .toList();

    private final JdbcClient jdbc;

    JdbcCellHistory(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Kept last(CellId cell) {
        return jdbc.sql("""
                select (select coalesce(max(kept_no), 0) from cell_tags where cell_id = :cell) as tag,
                    (select coalesce(max(kept_no), 0) from cell_day_tests where cell_id = :cell) as test,
                    (select coalesce(max(kept_no), 0) from cell_stops where cell_id = :cell) as stop""")
                .param("cell", cell.value())
                .query((row, number) -> new Kept(row.getLong("tag"), row.getLong("test"), row.getLong("stop")))
                .single();
    }

    @Override
    public boolean stoppedOrTestedSince(CellId cell, Kept before) {
        return testedSince(cell, before)
                || jdbc.sql("""
                        select count(*) from cell_tags where cell_id = :cell and kept_no > :after and kind in (:kinds)""")
                                .param("cell", cell.value())
                                .param("after", before.tag())
                                .param("kinds", STOPPING)
                                .query(Integer.class)
                                .single()
                        > 0;
    }

    @Override
    public boolean testedSince(CellId cell, Kept before) {
        return jdbc.sql("select count(*) from cell_day_tests where cell_id = :cell and kept_no > :after")
                        .param("cell", cell.value())
                        .param("after", before.test())
                        .query(Integer.class)
                        .single()
                > 0;
    }

    @Override
    public long lastReturned(CellId cell) {
        return jdbc.sql("""
                select coalesce(max(kept_no), 0) from cell_tags
                where cell_id = :cell and lifted_at is not null and kind in (:kinds)""")
                .param("cell", cell.value())
                .param("kinds", STOPPING)
                .query(Long.class)
                .single();
    }

    @Override
    public List<CellStop> stopsSince(CellId cell, Kept before) {
        return jdbc.sql("select * from cell_stops where cell_id = :cell and kept_no > :after order by kept_no")
                .param("cell", cell.value())
                .param("after", before.stop())
                .query(JdbcCellStops::stop)
                .list();
    }
}
