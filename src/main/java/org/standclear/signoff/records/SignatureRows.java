package org.standclear.signoff.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;
import org.standclear.signoff.Answers;
import org.standclear.signoff.Part;
import org.standclear.signoff.Signature;

/** Signatures and what was answered under them; only ever added. */
@Repository
class SignatureRows {

    private final JdbcClient jdbc;

    SignatureRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Signature> of(UUID sheet) {
        return jdbc.sql("select * from signoff_signatures where sheet_id = :sheet order by signed_at, id")
                .param("sheet", sheet)
                .query(this::signature)
                .list();
    }

    void add(Signature signature) {
        jdbc.sql("""
                insert into signoff_signatures (id, sheet_id, part, signer, printed_name, signed_at, meaning, statement,
                    statement_sha256, method, agreed)
                values (:id, :sheet, :part, :signer, :name, :at, :meaning, :statement, :sha256, :method, :agreed)""")
                .param("id", signature.id())
                .param("sheet", signature.sheet())
                .param("part", signature.part().code())
                .param("signer", signature.signer().value())
                .param("name", signature.printedName())
                .param("at", SqlTime.toSql(signature.at()))
                .param("meaning", signature.meaning())
                .param("statement", signature.statement())
                .param("sha256", signature.statementSha256())
                .param("method", signature.method().name())
                .param("agreed", signature.agreed())
                .update();
        signature
                .answers()
                .byItem()
                .forEach((item, values) ->
                        values.forEach((field, answer) -> addAnswer(signature.id(), item, field, answer)));
    }

    private void addAnswer(UUID signature, int item, String field, String answer) {
        jdbc.sql("insert into signoff_answers (signature_id, item, field, answer) values (:id, :item, :field, :answer)")
                .param("id", signature)
                .param("item", item)
                .param("field", field)
                .param("answer", answer)
                .update();
    }

    private Signature signature(ResultSet row, int number) throws SQLException {
        UUID id = row.getObject("id", UUID.class);
        return new Signature(
                id,
                row.getObject("sheet_id", UUID.class),
                Part.of(row.getString("part")),
                new PersonId(row.getObject("signer", UUID.class)),
                row.getString("printed_name"),
                SqlTime.read(row, "signed_at"),
                row.getString("meaning"),
                row.getString("statement"),
                row.getString("statement_sha256"),
                Signature.Method.valueOf(row.getString("method")),
                row.getBoolean("agreed"),
                answers(id));
    }

    private Answers answers(UUID signature) {
        SortedMap<Integer, SortedMap<String, String>> byItem = new TreeMap<>();
        jdbc.sql("select item, field, answer from signoff_answers where signature_id = :id")
                .param("id", signature)
                .query(row -> {
                    byItem.computeIfAbsent(row.getInt("item"), item -> new TreeMap<>())
                            .put(row.getString("field"), row.getString("answer"));
                });
        return new Answers(byItem);
    }
}
