package org.standclear.cell;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Features as the table has them. */
@Service
@Transactional
class JdbcCellFeatures implements CellFeatures {

    private static final int LONGEST = 60;

    private final JdbcClient jdbc;
    private final Cells cells;
    private final Trail trail;
    private final Clock clock;

    JdbcCellFeatures(JdbcClient jdbc, Cells cells, Trail trail, Clock clock) {
        this.jdbc = jdbc;
        this.cells = cells;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Feature> of(CellId cell) {
        return jdbc.sql("select * from cell_features where cell_id = :cell and live = 1 order by words")
                .param("cell", cell.value())
                .query((row, number) -> feature(row))
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public Map<CellId, Set<String>> ofAll() {
        Map<CellId, Set<String>> all = new HashMap<>();
        Set<CellId> here = cells.all().stream().map(Cell::id).collect(Collectors.toSet());
        jdbc.sql("select * from cell_features where live = 1").query((row, number) -> feature(row)).list().stream()
                .filter(one -> here.contains(one.cell()))
                .forEach(one ->
                        all.computeIfAbsent(one.cell(), key -> new HashSet<>()).add(one.words()));
        return all;
    }

    @Override
    public Optional<String> add(CellId id, String words, PersonId by) {
        String kept = CellFeatures.kept(words);
        if (PlainText.check(kept, LONGEST) instanceof PlainText.Refused refused) {
            return Optional.of(refused.says());
        }
        Cell cell = cells.lock(id);
        if (of(id).stream().anyMatch(one -> one.words().equals(kept))) {
            return Optional.of(cell.name() + " has that already.");
        }
        jdbc.sql("""
                insert into cell_features (id, cell_id, words, added_by, added_at, live)
                values (:id, :cell, :words, :by, :at, 1)""")
                .param("id", Id.newValue())
                .param("cell", id.value())
                .param("words", kept)
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .update();
        trail.append(TrailEntry.of(cell.lab(), "cell.feature-added", id, by, cell.name() + " has: " + kept));
        return Optional.empty();
    }

    @Override
    public boolean remove(UUID id, PersonId by) {
        Optional<Feature> feature = jdbc.sql("select * from cell_features where id = :id and live = 1 for update")
                .param("id", id)
                .query((row, number) -> feature(row))
                .optional();
        feature.ifPresent(one -> {
            jdbc.sql("update cell_features set live = null, removed_by = :by, removed_at = :at where id = :id")
                    .param("by", by.value())
                    .param("at", SqlTime.toSql(clock.instant()))
                    .param("id", id)
                    .update();
            Cell cell = cells.find(one.cell()).orElseThrow();
            trail.append(TrailEntry.of(
                    cell.lab(), "cell.feature-removed", cell.id(), by, cell.name() + " no longer has: " + one.words()));
        });
        return feature.isPresent();
    }

    private static Feature feature(ResultSet row) throws SQLException {
        return new Feature(
                row.getObject("id", UUID.class),
                new CellId(row.getObject("cell_id", UUID.class)),
                row.getString("words"),
                new PersonId(row.getObject("added_by", UUID.class)),
                SqlTime.read(row, "added_at"));
    }
}
