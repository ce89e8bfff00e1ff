package org.standclear.signoff.records;

import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.PersonId;
import org.standclear.signoff.Answers;
import org.standclear.signoff.Part;

/** What an account has answered and not signed yet; each account sees its own only. */
@Repository
class DraftRows {

    private final JdbcClient jdbc;

    DraftRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Answers of(UUID sheet, Part part, PersonId account) {
        SortedMap<Integer, SortedMap<String, String>> byItem = new TreeMap<>();
        jdbc.sql("""
                select item, field, answer from signoff_drafts
                where sheet_id = :sheet and part = :part and account_id = :account""")
                .param("sheet", sheet)
                .param("part", part.code())
                .param("account", account.value())
                .query(row -> {
                    byItem.computeIfAbsent(row.getInt("item"), item -> new TreeMap<>())
                            .put(row.getString("field"), row.getString("answer"));
                });
        return new Answers(byItem);
    }

    void put(UUID sheet, Part part, PersonId account, int item, Map<String, String> values) {
        remove(sheet, part, account, item);
        values.forEach((field, answer) -> jdbc.sql("""
                insert into signoff_drafts (sheet_id, part, account_id, item, field, answer)
                values (:sheet, :part, :account, :item, :field, :answer)""")
                .param("sheet", sheet)
                .param("part", part.code())
                .param("account", account.value())
                .param("item", item)
                .param("field", field)
                .param("answer", answer)
                .update());
    }

    void remove(UUID sheet, Part part, PersonId account, int item) {
        jdbc.sql("""
                delete from signoff_drafts
                where sheet_id = :sheet and part = :part and account_id = :account and item = :item""")
                .param("sheet", sheet)
                .param("part", part.code())
                .param("account", account.value())
                .param("item", item)
                .update();
    }
}
