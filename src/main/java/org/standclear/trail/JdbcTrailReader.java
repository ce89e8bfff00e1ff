package org.standclear.trail;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;

/** The record as the database answers for it. */
@Repository
class JdbcTrailReader implements TrailReader {

    private static final int EXPORT_ROWS = 1000;

    // a choice of filters is no reason to read five years of entries
    private static final String LATEST =
            "select kind, actor from trail_entries where lab = :lab order by lab desc, sequence desc fetch first 5000 rows only";

    private final JdbcClient jdbc;

    JdbcTrailReader(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<RecordedEntry> about(LabId lab, String subject) {
        return jdbc.sql(
                        "select * from trail_entries where lab = :lab and subject = :subject order by lab, subject, sequence")
                .param("lab", lab.value())
                .param("subject", subject)
                .query(EntryRows::recorded)
                .list();
    }

    @Override
    public List<RecordedEntry> latest(TrailFilter filter, long before, int atMost) {
        return select(filter, "sequence < :bound order by lab desc, sequence desc", before, atMost);
    }

    @Override
    public void each(TrailFilter filter, Consumer<RecordedEntry> use) {
        long after = 0;
        List<RecordedEntry> page;
        do {
            page = select(filter, "sequence > :bound order by lab, sequence", after, EXPORT_ROWS);
            for (RecordedEntry entry : page) {
                use.accept(entry);
                after = entry.sequence();
            }
        } while (page.size() == EXPORT_ROWS);
    }

    @Override
    public Optional<RecordedEntry> at(LabId lab, long sequence) {
        return jdbc.sql("select * from trail_entries where lab = :lab and sequence = :sequence")
                .param("lab", lab.value())
                .param("sequence", sequence)
                .query(EntryRows::recorded)
                .optional();
    }

    @Override
    public List<String> kinds(LabId lab) {
        return jdbc.sql("select distinct kind from (" + LATEST + ") latest order by kind")
                .param("lab", lab.value())
                .query(String.class)
                .list();
    }

    @Override
    public List<PersonId> actors(LabId lab) {
        return jdbc.sql("select distinct actor from (" + LATEST + ") latest where actor is not null")
                .param("lab", lab.value())
                .query((row, number) -> new PersonId(row.getObject("actor", UUID.class)))
                .list();
    }

    private List<RecordedEntry> select(TrailFilter filter, String place, long bound, int atMost) {
        List<String> conditions = new ArrayList<>();
        Map<String, Object> values = new HashMap<>();
        narrow(filter, conditions, values);
        conditions.add(place);
        values.put("bound", bound);
        return jdbc.sql("select * from trail_entries where " + String.join(" and ", conditions) + " fetch first "
                        + atMost + " rows only")
                .params(values)
                .query(EntryRows::recorded)
                .list();
    }

    private static void narrow(TrailFilter filter, List<String> conditions, Map<String, Object> values) {
        conditions.add("lab = :lab");
        values.put("lab", filter.lab().value());
        if (!filter.kindPrefix().isEmpty()) {
            conditions.add("kind like :kind escape '!'");
            values.put("kind", literally(filter.kindPrefix()) + "%");
        }
        if (filter.person() != null) {
            conditions.add("(actor = :actor or subject = :person or facts like :namesPerson)");
            values.put("actor", filter.person().value());
            values.put("person", filter.person().toString());
            values.put("namesPerson", "%" + filter.person() + "%");
        }
        if (!filter.about().isEmpty()) {
            conditions.add("(subject = :about or facts like :namesIt escape '!')");
            values.put("about", filter.about());
            values.put("namesIt", "%" + literally(filter.about()) + "%");
        }
        if (filter.from() != null) {
            conditions.add("at >= :from");
            values.put("from", filter.from().atOffset(ZoneOffset.UTC));
        }
        if (filter.until() != null) {
            conditions.add("at < :until");
            values.put("until", filter.until().atOffset(ZoneOffset.UTC));
        }
    }

    private static String literally(String text) {
        return text.replaceAll("([!%_])", "!$1");
    }
}
