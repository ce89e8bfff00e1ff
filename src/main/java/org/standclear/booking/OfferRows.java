package org.standclear.booking;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.booking.WaitingList.Offer;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Offers of slots as the table has them; an open one holds its slot by claims until its time is over. */
@Repository
class OfferRows {

    private final JdbcClient jdbc;
    private final Labs labs;
    private final Claims claims;

    OfferRows(JdbcClient jdbc, Labs labs, Claims claims) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.claims = claims;
    }

    void insert(Offer offer, Instant at) {
        jdbc.sql("""
                insert into booking_offers (id, wait_id, person_id, cell_id, starts_at, ends_at, made_at, until_at, state)
                values (:id, :wait, :person, :cell, :start, :end, :at, :until, 'OPEN')""")
                .param("id", offer.id())
                .param("wait", offer.waitId())
                .param("person", offer.person().value())
                .param("cell", offer.slot().cell().value())
                .param("start", SqlTime.toSql(offer.slot().start()))
                .param("end", SqlTime.toSql(offer.slot().end()))
                .param("at", SqlTime.toSql(at))
                .param("until", SqlTime.toSql(offer.until()))
                .update();
        claims.add(List.of(
                Claims.Claim.ofOffer(
                        offer.id(),
                        Claims.Kind.CELL,
                        offer.slot().cell().value(),
                        offer.slot().start(),
                        offer.slot().end()),
                Claims.Claim.ofOffer(
                        offer.id(),
                        Claims.Kind.OPERATOR,
                        offer.person().value(),
                        offer.slot().start(),
                        offer.slot().end())));
    }

    Optional<Offer> find(UUID id) {
        return jdbc.sql("select * from booking_offers where id = :id")
                .param("id", id)
                .query(OfferRows::offer)
                .optional();
    }

    /** Locks the offer if it is one of this lab. */
    Optional<Offer> lock(UUID id) {
        return jdbc.sql("""
                select * from booking_offers where id = :id
                  and wait_id in (select w.id from booking_waits w where w.lab_id = :lab) for update""")
                .param("lab", labs.theLab().id().value())
                .param("id", id)
                .query(OfferRows::offer)
                .optional();
    }

    Optional<Offer> openOf(UUID wait) {
        return jdbc.sql("select * from booking_offers where wait_id = :wait and state = 'OPEN'")
                .param("wait", wait)
                .query(OfferRows::offer)
                .optional();
    }

    /** Open offers of waits that go on in this lab, by the wait. */
    Map<UUID, Offer> open() {
        Map<UUID, Offer> open = new HashMap<>();
        jdbc.sql("""
                select o.* from booking_waits w join booking_offers o on o.wait_id = w.id and o.state = 'OPEN'
                where w.lab_id = :lab and w.ended_at is null""")
                .param("lab", labs.theLab().id().value())
                .query(OfferRows::offer)
                .list()
                .forEach(offer -> open.put(offer.waitId(), offer));
        return open;
    }

    /** How many offers of slots in that time, still ahead, the person has let go in this lab. */
    int letGo(PersonId person, @Nullable CellId cell, Instant from, Instant until, Instant now) {
        return jdbc.sql("""
                select count(*) from booking_offers o join booking_waits w on w.id = o.wait_id
                where w.lab_id = :lab and w.person_id = :person and o.state in ('DECLINED', 'EXPIRED')
                  and o.ends_at > :from and o.starts_at < :until and o.starts_at > :now
                  and (cast(:cell as uuid) is null or o.cell_id = cast(:cell as uuid))""")
                .param("lab", labs.theLab().id().value())
                .param("person", person.value())
                .param("cell", cell == null ? null : cell.value())
                .param("from", SqlTime.toSql(from))
                .param("until", SqlTime.toSql(until))
                .param("now", SqlTime.toSql(now))
                .query(Integer.class)
                .single();
    }

    /** Waits for whoever is just deciding the open offer of a wait. */
    Optional<Offer> lockOpenOf(UUID wait) {
        return jdbc.sql("select * from booking_offers where wait_id = :wait and state = 'OPEN' for update")
                .param("wait", wait)
                .query(OfferRows::offer)
                .optional();
    }

    /** Locks those whose time is over and that nobody else is about to settle. */
    List<Offer> lockExpired(Instant now) {
        return jdbc.sql("""
                select * from booking_offers where state = 'OPEN' and until_at <= :now
                  and exists (select 1 from booking_waits w where w.id = wait_id and w.lab_id = :lab)
                order by until_at, id for update skip locked""")
                .param("now", SqlTime.toSql(now))
                .param("lab", labs.theLab().id().value())
                .query(OfferRows::offer)
                .list();
    }

    /** Decides an open one and gives up what it held; the row is locked. */
    void decide(UUID id, OfferState state, Instant at) {
        jdbc.sql("update booking_offers set state = :state, decided_at = :at where id = :id and state = 'OPEN'")
                .param("state", state.name())
                .param("at", SqlTime.toSql(at))
                .param("id", id)
                .update();
        claims.giveUpOffer(id);
    }

    /** Whether it holds its slot at the instant. */
    boolean holds(@Nullable UUID id, Instant now) {
        return id != null
                && find(id).filter(offer -> offer.state() == OfferState.OPEN && now.isBefore(offer.until()))
                        .isPresent();
    }

    /** Frees what an offer holds whose time is over; says whether it did. Its wait is settled by the next round. */
    boolean freeIfOver(@Nullable UUID id, Instant now) {
        if (id == null || holds(id, now)) {
            return false;
        }
        claims.giveUpOffer(id);
        return true;
    }

    /** Open offers whose slots lie in the time. */
    List<Offer> heldBetween(Instant from, Instant until, Instant now) {
        return jdbc.sql("""
                select * from booking_offers
                where state = 'OPEN' and until_at > :now and ends_at > :from and starts_at < :until
                order by starts_at, id""")
                .param("now", SqlTime.toSql(now))
                .param("from", SqlTime.toSql(from))
                .param("until", SqlTime.toSql(until))
                .query(OfferRows::offer)
                .list();
    }

    private static Offer offer(ResultSet row, int number) throws SQLException {
        return new Offer(
                row.getObject("id", UUID.class),
                row.getObject("wait_id", UUID.class),
                new PersonId(row.getObject("person_id", UUID.class)),
                new Slot(
                        new CellId(row.getObject("cell_id", UUID.class)),
                        SqlTime.read(row, "starts_at"),
                        SqlTime.read(row, "ends_at")),
                SqlTime.read(row, "until_at"),
                OfferState.valueOf(row.getString("state")));
    }
}
