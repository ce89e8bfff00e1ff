package org.standclear.platform.access;

import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.ids.Id;
import org.standclear.platform.retention.Concern;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueFrom;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;

/** Looks of long ago at medical parts of incidents; they stay while the notes that were looked at do. */
@Component
class OldMedicalLooks extends DisposableRows {

    private final JdbcClient jdbc;

    OldMedicalLooks(JdbcClient jdbc) {
        super(
                RecordKind.MEDICAL_LOOKS,
                new DueRows(jdbc, new DueFrom("l.id", "l.seen_at", """
                cast(case when length(l.whose) = 36 then l.whose end as uuid) as person, '' as kept_back,
                concat('look by ', v.printed_name, ' (', v.login, ')') as said""", """
                platform_looks l left join people v on v.id = l.viewer where l.sight = 'MEDICAL'"""), look -> incident(jdbc, look)));
        this.jdbc = jdbc;
    }

    private static Set<Concern> incident(JdbcClient jdbc, UUID look) {
        return jdbc
                .sql("select subject from platform_looks where id = :id")
                .param("id", look)
                .query(String.class)
                .list()
                .stream()
                .filter(subject -> subject.matches("[0-9a-f-]{36}"))
                .map(subject -> new Concern(About.INCIDENT, Id.parse(subject)))
                .collect(Collectors.toSet());
    }

    @Override
    public boolean dispose(UUID id) {
        return jdbc.sql("delete from platform_looks where id = :id and sight = 'MEDICAL'")
                        .param("id", id)
                        .update()
                == 1;
    }
}
