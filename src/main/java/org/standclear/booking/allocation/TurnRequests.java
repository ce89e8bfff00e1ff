package org.standclear.booking.allocation;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.core.allocation.Span;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** What people ask for in a window; each person one request, the last one sent. */
@Repository
public class TurnRequests {

    private final JdbcClient jdbc;
    private final Windows windows;
    private final PartnerLetters letters;
    private final Clock clock;

    TurnRequests(JdbcClient jdbc, Windows windows, PartnerLetters letters, Clock clock) {
        this.jdbc = jdbc;
        this.windows = windows;
        this.letters = letters;
        this.clock = clock;
    }

    /** All requests of a window, in the order in which people asked first. */
    public List<TurnRequest> of(UUID window) {
        return read("window_id = :window", window, null);
    }

    /** What the person asks for in the window. */
    public Optional<TurnRequest> of(UUID window, PersonId operator) {
        return read("window_id = :window and operator_id = :operator", window, operator).stream()
                .findFirst();
    }

    /** The requests that name the person as partner, in the order in which people asked first. */
    List<TurnRequest> naming(UUID window, PersonId partner) {
        return read("window_id = :window and partner_id = :operator", window, partner);
    }

    /**
     * Puts the request in the place of the person's earlier one, which is another one then; not when somebody has just
     * accepted a plan or closed the window. Whoever is named anew is told, and so is who is no longer. A partner who has
     * declined meanwhile stays out of it.
     */
    @Transactional
    public boolean ask(TurnRequest sent) {
        Window window = windows.lock(sent.window());
        if (!window.isUndecided()) {
            return false;
        }
        TurnRequest asked = sent.partner() != null && isDeclined(sent) ? sent.alone() : sent;
        TurnRequest before = of(asked.window(), asked.operator()).orElse(null);
        remove(asked.window(), asked.operator());
        insert(asked);
        letters.changed(window, before, asked);
        return true;
    }

    private boolean isDeclined(TurnRequest sent) {
        return jdbc.sql("""
                        select count(*) from booking_partner_declines
                        where window_id = :window and operator_id = :operator and partner_id = cast(:partner as uuid)""")
                        .param("window", sent.window())
                        .param("operator", sent.operator().value())
                        .param(
                                "partner",
                                sent.partner() == null ? null : sent.partner().value())
                        .query(Integer.class)
                        .single()
                > 0;
    }

    private void insert(TurnRequest asked) {
        jdbc.sql("""
                insert into booking_turn_requests (id, window_id, operator_id, partner_id, assignment_id, tool, turns,
                    attends, make_up, asked_at)
                values (:id, :window, :operator, cast(:partner as uuid), cast(:assignment as uuid), :tool, :turns,
                    :attends, :makeUp, :at)""")
                .param("id", asked.id())
                .param("window", asked.window())
                .param("operator", asked.operator().value())
                .param(
                        "partner",
                        asked.partner() == null ? null : asked.partner().value())
                .param(
                        "assignment",
                        asked.assignment() == null ? null : asked.assignment().value())
                .param("tool", asked.tool())
                .param("turns", asked.turns())
                .param("attends", asked.attends())
                .param("makeUp", asked.makeUp())
                .param("at", SqlTime.toSql(clock.instant()))
                .update();
        insert(asked.id(), "CAN", asked.canCome());
        insert(asked.id(), "WISH", asked.wishes());
    }

    /** The request goes on without its partner: the plan finds an attendant. The window is locked. */
    void letPartnerGo(TurnRequest request) {
        jdbc.sql("update booking_turn_requests set partner_id = null where id = :id")
                .param("id", request.id())
                .update();
    }

    /** The request has that partner again. The window is locked. */
    void nameAgain(TurnRequest request, PersonId partner) {
        jdbc.sql("update booking_turn_requests set partner_id = :partner where id = :id")
                .param("partner", partner.value())
                .param("id", request.id())
                .update();
    }

    /** Takes the person's request back, unless somebody has just accepted a plan or closed the window. */
    @Transactional
    public void withdraw(UUID window, PersonId operator) {
        Window locked = windows.lock(window);
        if (locked.isUndecided()) {
            TurnRequest before = of(window, operator).orElse(null);
            remove(window, operator);
            letters.changed(locked, before, null);
        }
    }

    private void remove(UUID window, PersonId operator) {
        jdbc.sql("""
                delete from booking_turn_times where request_id in
                    (select id from booking_turn_requests where window_id = :window and operator_id = :operator)""")
                .param("window", window)
                .param("operator", operator.value())
                .update();
        jdbc.sql("delete from booking_turn_requests where window_id = :window and operator_id = :operator")
                .param("window", window)
                .param("operator", operator.value())
                .update();
    }

    private void insert(UUID request, String kind, List<Span> spans) {
        for (int place = 0; place < spans.size(); place++) {
            jdbc.sql("""
                    insert into booking_turn_times (request_id, kind, place, starts_at, ends_at)
                    values (:request, :kind, :place, :from, :until)""")
                    .param("request", request)
                    .param("kind", kind)
                    .param("place", place)
                    .param("from", SqlTime.toSql(spans.get(place).from()))
                    .param("until", SqlTime.toSql(spans.get(place).until()))
                    .update();
        }
    }

    private record KeptTime(UUID request, String kind, Span span) {}

    private List<TurnRequest> read(String which, UUID window, @Nullable PersonId operator) {
        Map<String, Object> asked = new HashMap<>(Map.of("window", window));
        if (operator != null) {
            asked.put("operator", operator.value());
        }
        Map<UUID, List<Span>> can = new HashMap<>();
        Map<UUID, List<Span>> wish = new HashMap<>();
        jdbc.sql("select t.* from booking_turn_times t join booking_turn_requests r on r.id = t.request_id where "
                        + which + " order by t.request_id, t.kind, t.place")
                .params(asked)
                .query((row, number) -> new KeptTime(
                        row.getObject("request_id", UUID.class),
                        row.getString("kind"),
                        new Span(SqlTime.read(row, "starts_at"), SqlTime.read(row, "ends_at"))))
                .list()
                .forEach(time -> (time.kind().equals("CAN") ? can : wish)
                        .computeIfAbsent(time.request(), key -> new ArrayList<>())
                        .add(time.span()));
        return jdbc.sql("select * from booking_turn_requests where " + which + " order by asked_at, id")
                .params(asked)
                .query((row, number) -> request(row, can, wish))
                .list();
    }

    private static TurnRequest request(ResultSet row, Map<UUID, List<Span>> can, Map<UUID, List<Span>> wish)
            throws SQLException {
        UUID id = row.getObject("id", UUID.class);
        UUID partner = row.getObject("partner_id", UUID.class);
        UUID assignment = row.getObject("assignment_id", UUID.class);
        return new TurnRequest(
                id,
                row.getObject("window_id", UUID.class),
                new PersonId(row.getObject("operator_id", UUID.class)),
                partner == null ? null : new PersonId(partner),
                assignment == null ? null : new AssignmentId(assignment),
                row.getString("tool"),
                row.getInt("turns"),
                row.getBoolean("attends"),
                row.getBoolean("make_up"),
                can.getOrDefault(id, List.of()),
                wish.getOrDefault(id, List.of()));
    }
}
