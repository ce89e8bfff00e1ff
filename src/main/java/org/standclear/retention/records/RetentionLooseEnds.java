package org.standclear.retention.records;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.UUID;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.LooseEnds;
import org.standclear.platform.security.Role;

/** Disposal lists that are approved and not carried out to their end, and legal holds that stand. */
@Component
@Order(3)
class RetentionLooseEnds implements LooseEnds {

    private final JdbcClient jdbc;

    RetentionLooseEnds(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<LooseEnd> of(LabId lab) {
        List<LooseEnd> ends = new ArrayList<>(jdbc.sql("""
                select id, month_code from retention_lists where lab_id = :lab and finished_at is null
                order by month_code""")
                .param("lab", lab.value())
                .query((row, number) -> new LooseEnd(
                        "The disposal list of " + row.getString("month_code") + " is not carried out to its end."
                                + " It goes on by itself; its page says what is left.",
                        List.of(),
                        EnumSet.of(Role.ADMINISTRATOR),
                        "/retention/lists/" + row.getObject("id", UUID.class),
                        true))
                .list());
        int holds = jdbc.sql("select count(*) from retention_holds where lab_id = :lab and lifted_at is null")
                .param("lab", lab.value())
                .query(Integer.class)
                .single();
        if (holds > 0) {
            ends.add(new LooseEnd(
                    LooseEnd.count(holds, "legal hold stands", "legal holds stand")
                            + ". A second person lifts each when its reason is gone.",
                    List.of(),
                    EnumSet.of(Role.INSTRUCTOR, Role.ADMINISTRATOR),
                    "/retention/holds?lab=" + lab,
                    true));
        }
        return ends;
    }
}
