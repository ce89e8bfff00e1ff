package org.standclear.booking.allocation;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.core.allocation.LeftOut;
import org.standclear.core.allocation.Placed;
import org.standclear.core.allocation.Plan;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** Plans that searches found: who gets which place, and who is left out and why. */
@Repository
public class Plans {

    private final JdbcClient jdbc;
    private final TurnRequests requests;

    Plans(JdbcClient jdbc, TurnRequests requests) {
        this.jdbc = jdbc;
        this.requests = requests;
    }

    /** A turn that was left out. */
    public record LeftOutTurn(UUID request, int turn, PersonId operator, LeftOut.Rule rule, String says) {}

    /** The places of a search's plan, by start. */
    public List<PlannedTurn> places(UUID search) {
        return jdbc.sql("select * from booking_plan_places where search_id = :search order by starts_at, cell_id")
                .param("search", search)
                .query((row, number) -> {
                    UUID assignment = row.getObject("assignment_id", UUID.class);
                    UUID booking = row.getObject("booking_id", UUID.class);
                    return new PlannedTurn(
                            row.getObject("request_id", UUID.class),
                            row.getInt("turn"),
                            new PersonId(row.getObject("operator_id", UUID.class)),
                            assignment == null ? null : new AssignmentId(assignment),
                            new CellId(row.getObject("cell_id", UUID.class)),
                            SqlTime.read(row, "starts_at"),
                            SqlTime.read(row, "ends_at"),
                            new PersonId(row.getObject("attendant_id", UUID.class)),
                            booking == null ? null : new BookingId(booking));
                })
                .list();
    }

    /** Who is left out, and why. */
    public List<LeftOutTurn> leftOut(UUID search) {
        return jdbc.sql("select * from booking_left_out_turns where search_id = :search order by operator_id, turn")
                .param("search", search)
                .query((row, number) -> new LeftOutTurn(
                        row.getObject("request_id", UUID.class),
                        row.getInt("turn"),
                        new PersonId(row.getObject("operator_id", UUID.class)),
                        LeftOut.Rule.valueOf(row.getString("rule")),
                        row.getString("says")))
                .list();
    }

    /** Keeps what a search found; within the caller's transaction. */
    void keep(Search search, Plan plan, List<LeftOut> leftOut) {
        var byId = new java.util.HashMap<UUID, TurnRequest>();
        requests.of(search.window()).forEach(request -> byId.put(request.id(), request));
        for (Placed placed : plan.placed()) {
            TurnRequest request = byId.get(request(placed.turn()));
            if (request != null) {
                place(search.id(), placed, request);
            }
        }
        for (LeftOut one : leftOut) {
            TurnRequest request = byId.get(request(one.turn()));
            if (request != null) {
                jdbc.sql("""
                        insert into booking_left_out_turns (search_id, request_id, turn, operator_id, rule, says)
                        values (:search, :request, :turn, :operator, :rule, :says)""")
                        .param("search", search.id())
                        .param("request", request.id())
                        .param("turn", number(one.turn()))
                        .param("operator", request.operator().value())
                        .param("rule", one.rule().name())
                        .param("says", one.says())
                        .update();
            }
        }
    }

    private void place(UUID search, Placed placed, TurnRequest request) {
        jdbc.sql("""
                insert into booking_plan_places (search_id, request_id, turn, operator_id, assignment_id, cell_id,
                    starts_at, ends_at, attendant_id)
                values (:search, :request, :turn, :operator, cast(:assignment as uuid), :cell, :from, :until, :attendant)""")
                .param("search", search)
                .param("request", request.id())
                .param("turn", number(placed.turn()))
                .param("operator", request.operator().value())
                .param(
                        "assignment",
                        request.assignment() == null
                                ? null
                                : request.assignment().value())
                .param("cell", Id.parse(placed.cell()))
                .param("from", SqlTime.toSql(placed.span().from()))
                .param("until", SqlTime.toSql(placed.span().until()))
                .param("attendant", Id.parse(placed.attendant()))
                .update();
    }

    void booked(UUID search, PlannedTurn turn, BookingId booking) {
        jdbc.sql("""
                update booking_plan_places set booking_id = :booking
                where search_id = :search and request_id = :request and turn = :turn""")
                .param("booking", booking.value())
                .param("search", search)
                .param("request", turn.request())
                .param("turn", turn.turn())
                .update();
    }

    private static UUID request(String turn) {
        return Id.parse(turn.substring(0, turn.indexOf(':')));
    }

    private static int number(String turn) {
        return Integer.parseInt(turn.substring(turn.indexOf(':') + 1));
    }
}
