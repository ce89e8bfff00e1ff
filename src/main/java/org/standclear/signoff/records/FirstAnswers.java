package org.standclear.signoff.records;

import java.time.Instant;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;
import org.standclear.signoff.Part;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffList;

/** When a releaser began on a bench list: the first answer that could be read, whether or not it agreed; kept once. */
@Repository
class FirstAnswers {

    private final JdbcClient jdbc;

    FirstAnswers(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Under the locks of booking and cell, like every answer. */
    void keep(Sheet sheet, Part part, PersonId account, Instant at) {
        if (part != Part.RELEASER || sheet.list() != SignoffList.BENCH) {
            return;
        }
        // asked apart: within one transaction H2 answers a "not exists" of the insert's own from before the row that it
        // made
        int kept = jdbc.sql("select count(*) from signoff_first_answers where sheet_id = :sheet")
                .param("sheet", sheet.id())
                .query(Integer.class)
                .single();
        if (kept > 0) {
            return;
        }
        jdbc.sql("""
                insert into signoff_first_answers (sheet_id, account_id, answered_at)
                values (:sheet, :account, :at)""")
                .param("sheet", sheet.id())
                .param("account", account.value())
                .param("at", SqlTime.toSql(at))
                .update();
    }
}
