package org.standclear.platform.lab;

import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.ids.LabId;

/** The labs of this installation; for now the pages serve one. */
@Repository
public class Labs {

    /** What a lab without settings is shown as, until the administrator names it. */
    private static final LabId FIRST = LabId.of("00000000-0000-7000-8000-000000000001");

    private static final Duration MOMENT = Duration.ofSeconds(1);

    private final JdbcClient jdbc;
    private final AtomicReference<@Nullable Seen> cached = new AtomicReference<>();

    Labs(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The lab and when it was read: another instance may change it, and its benches show it a moment later. */
    private record Seen(Lab lab, long at) {}

    /** The lab that the pages serve; made with plain settings by the first migration. */
    public Lab theLab() {
        Seen known = cached.get();
        long now = System.nanoTime();
        if (known == null || now - known.at() > MOMENT.toNanos()) {
            known = new Seen(find(FIRST).orElseThrow(() -> new IllegalStateException("the first lab is missing")), now);
            cached.set(known);
        }
        return known.lab();
    }

    /** All labs, oldest first. */
    public List<Lab> all() {
        return jdbc.sql("select * from labs order by id").query(Labs::lab).list();
    }

    /** The lab of that id. */
    public Optional<Lab> find(LabId id) {
        return jdbc.sql("select * from labs where id = :id")
                .param("id", id.value())
                .query(Labs::lab)
                .optional();
    }

    /** Stores new settings for a lab that exists. */
    @Transactional
    public void change(Lab lab) {
        jdbc.sql("""
                update labs set college = :college, room = :room, name = :name, zone = :zone,
                    emergency_number = :emergency, first_aider = :firstAider, stop_map = :stopMap
                where id = :id""")
                .param("college", lab.college())
                .param("room", lab.room())
                .param("name", lab.name())
                .param("zone", lab.zone().getId())
                .param("emergency", lab.emergencyNumber())
                .param("firstAider", lab.firstAider())
                .param("stopMap", lab.stopMap())
                .param("id", lab.id().value())
                .update();
        cached.set(null);
    }

    private static Lab lab(java.sql.ResultSet row, int number) throws java.sql.SQLException {
        return new Lab(
                new LabId(row.getObject("id", UUID.class)),
                row.getString("college"),
                row.getString("room"),
                row.getString("name"),
                ZoneId.of(row.getString("zone")),
                row.getString("emergency_number"),
                row.getString("first_aider"),
                row.getString("stop_map"));
    }
}
