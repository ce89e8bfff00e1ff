package org.standclear.cell;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.lab.Labs;

/**
 * Splits a question for the latest of a lab into one for each cell: an index that begins with the cell has them in order, the
 * years before unread (docs/benchmarks.md, "What H2 follows").
 */
@Component
public class CellByCell {

    /** A question grows with its parts, and H2 keeps such a text with all its words for each connection. */
    private static final int MOST = 40;

    private final JdbcClient jdbc;
    private final Labs labs;

    CellByCell(JdbcClient jdbc, Labs labs) {
        this.jdbc = jdbc;
        this.labs = labs;
    }

    /**
     * The parts, put together by "union all"; nothing between the quotes for a lab without cells. Empty when there are so
     * many cells that the lab is better asked as a whole.
     *
     * @param only the one cell that is wanted, or null for all
     * @param values gets the cells' ids, by the names that the parts use
     * @param part makes a part from the name of its cell's id
     */
    public Optional<String> parts(@Nullable CellId only, Map<String, Object> values, UnaryOperator<String> part) {
        List<UUID> cells = jdbc.sql("select id from cells where lab_id = :lab")
                .param("lab", labs.theLab().id().value())
                .query(UUID.class)
                .list();
        if (only == null && cells.size() > MOST) {
            return Optional.empty();
        }
        return Optional.of(cells.stream()
                .filter(cell -> only == null || only.value().equals(cell))
                .map(cell -> {
                    String name = "cell" + values.size();
                    values.put(name, cell);
                    return "(" + part.apply(name) + ")";
                })
                .collect(Collectors.joining(" union all ")));
    }
}
