package org.standclear.simulation;

import java.nio.charset.StandardCharsets;
import java.sql.Blob;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** What was signed is what it says it is, complete, and in the record; and the record names nothing that is not there. */
final class SignedRules {

    /** Where the record tells of a row, and the fact that names it. */
    private record Told(String kind, String fact, String table, String instant) {

        boolean tells(ChainReader.Entry entry) {
            return entry.kind().startsWith(kind);
        }
    }

    private static final List<Told> TOLD = List.of(
            new Told("signoff.signed", "signature", "signoff_signatures", "signed_at"),
            new Told("signoff.released", "release", "signoff_releases", "issued_at"),
            new Told("signoff.waived", "waiver", "signoff_waivers", "given_at"),
            new Told("signoff.paper-card-typed-late", "card", "signoff_paper_cards", "typed_at"),
            new Told("run.", "event", "run_events", "happened_at"));

    /** Items that a part answers, by list, and whether it is the short one. */
    private static final Map<String, String> ITEMS = Map.of(
            "session false operator", "1,2,3,4",
            "session false attendant", "1,2,3,4",
            "handover false attendant", "1,2,7",
            "bench false operator", "1,2,3,4,5,6",
            "bench true operator", "1,2",
            "bench false attendant", "7",
            "bench true attendant", "7",
            "bench false releaser", "2,8",
            "bench true releaser", "2,8");

    private final Look look;
    private final Connection connection;

    SignedRules(Look look) {
        this.look = look;
        connection = look.connection();
    }

    List<String> faults(Instant since, List<ChainReader.Entry> fresh) throws SQLException {
        List<String> faults = new ArrayList<>();
        boolean signed = look.changed("signoff_signatures") || look.changed("program_contents");
        for (Map<String, Object> row : !signed ? List.<Map<String, Object>>of() : Rows.of(connection, """
                select g.*, s.list, s.brief, s.cell_version, s.operator_id, s.attendant_id, p.sha256 as program_sha256,
                    p.declaration_sha256, c.bytes, c.sha256 as content_sha256
                from signoff_signatures g join signoff_sheets s on s.id = g.sheet_id
                join program_revisions p on p.id = s.revision_id join program_contents c on c.id = p.content_id
                where g.signed_at > ?""", since)) {
            statement(row, faults);
            answers(row, faults);
        }
        for (Told told : TOLD) {
            if (look.changed(told.table()) || fresh.stream().anyMatch(told::tells)) {
                told(told, since, fresh, faults);
            }
        }
        return faults;
    }

    private static void statement(Map<String, Object> row, List<String> faults) throws SQLException {
        String statement = Rows.text(row, "statement");
        String id = "signature " + row.get("id");
        if (!ChainReader.sha256(statement.getBytes(StandardCharsets.UTF_8))
                .equals(Rows.text(row, "statement_sha256"))) {
            faults.add(id + ": the statement has another hash");
        }
        String file = ChainReader.sha256(bytes(Objects.requireNonNull(row.get("bytes"))));
        if (!file.equals(Rows.text(row, "program_sha256")) || !file.equals(Rows.text(row, "content_sha256"))) {
            faults.add(id + ": the program file has another hash");
        }
        for (String named : List.of(
                file, Rows.text(row, "declaration_sha256"), " version " + Rows.text(row, "cell_version") + ",")) {
            if (!statement.contains(named)) {
                faults.add(id + ": the statement does not name " + named);
            }
        }
        String owner = Rows.text(row, "part").equals("operator") ? "operator_id" : "attendant_id";
        if (!Rows.text(row, "part").equals("releaser")
                && !Rows.text(row, "signer").equals(Rows.text(row, owner))) {
            faults.add(id + ": signed by somebody else");
        }
    }

    private static byte[] bytes(Object stored) throws SQLException {
        return stored instanceof Blob blob ? blob.getBytes(1, (int) blob.length()) : (byte[]) stored;
    }

    private void answers(Map<String, Object> row, List<String> faults) throws SQLException {
        List<String> items = new ArrayList<>();
        for (Map<String, Object> item : Rows.of(
                connection,
                "select distinct item from signoff_answers where signature_id = ? order by item",
                Objects.requireNonNull(row.get("id")))) {
            items.add(Rows.text(item, "item"));
        }
        String list = Rows.text(row, "list") + " " + Rows.text(row, "brief") + " " + Rows.text(row, "part");
        if (!String.join(",", items).equals(ITEMS.get(list))) {
            faults.add("signature " + row.get("id") + ": " + list + " answers " + items);
        }
    }

    /** Rows and entries of the same act come together or not at all. */
    private void told(Told told, Instant since, List<ChainReader.Entry> fresh, List<String> faults)
            throws SQLException {
        List<String> named = fresh.stream()
                .filter(told::tells)
                .map(entry -> fact(entry.facts(), told.fact()))
                .filter(id -> !id.isEmpty())
                .sorted()
                .toList();
        List<String> there =
                Rows.of(connection, "select id from " + told.table() + " where " + told.instant() + " > ?", since)
                        .stream()
                        .map(row -> Rows.text(row, "id"))
                        .sorted()
                        .toList();
        if (!named.equals(there)) {
            faults.add(told.table() + " has " + there + ", the record tells of " + named);
        }
    }

    /** A fact of an entry; empty when it has none of that name. */
    static String fact(String json, String name) {
        String key = "\"" + name + "\":\"";
        int at = json.indexOf(key);
        return at < 0 ? "" : json.substring(at + key.length(), json.indexOf('"', at + key.length()));
    }
}
