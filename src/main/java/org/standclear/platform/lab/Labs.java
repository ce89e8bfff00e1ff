package org.standclear.platform.lab;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.standclear.platform.database.RowLocks;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.time.SqlTime;

/** The labs of this installation, and the one that the present work is for. */
@Repository
public class Labs {

    private static final Logger LOG = LoggerFactory.getLogger(Labs.class);

    /** Made by the first migration; what reading outside of any scope shows. */
    private static final LabId FIRST = LabId.of("00000000-0000-7000-8000-000000000001");

    private static final Duration MOMENT = Duration.ofSeconds(1);

    private final JdbcClient jdbc;
    private final RowLocks locks;
    private final boolean refuseOutsideOfScope;
    private final AtomicReference<@Nullable Seen> cached = new AtomicReference<>();
    private final AtomicLong changes = new AtomicLong();

    Labs(
            JdbcClient jdbc,
            RowLocks locks,
            @Value("${standclear.labs.refuse-outside-of-scope:true}") boolean refuseOutsideOfScope) {
        this.jdbc = jdbc;
        this.locks = locks;
        this.refuseOutsideOfScope = refuseOutsideOfScope;
    }

    /** The labs and when they were read: another instance may change one, and its benches show it a moment later. */
    private record Seen(List<Lab> labs, long at) {

        Optional<Lab> find(LabId id) {
            return labs.stream().filter(lab -> lab.id().equals(id)).findFirst();
        }
    }

    /**
     * The lab that the present work is for: that of the scope. Outside of any, reading shows the first one; a change is
     * refused where there are several, because nobody can tell for which of them it is meant.
     */
    public Lab theLab() {
        LabId here = LabScope.here().orElseGet(this::outsideOfAnyScope);
        return seen().find(here)
                .or(() -> anew().find(here))
                .orElseThrow(() -> new IllegalStateException("no lab " + here));
    }

    private LabId outsideOfAnyScope() {
        if (refuseOutsideOfScope && isChange() && areSeveral()) {
            IllegalStateException refused =
                    new IllegalStateException("a change outside of any lab's scope, where there are several labs");
            LOG.error("refused, since nobody can tell for which lab it is meant", refused);
            throw refused;
        }
        return FIRST;
    }

    private static boolean isChange() {
        return TransactionSynchronizationManager.isActualTransactionActive()
                && !TransactionSynchronizationManager.isCurrentTransactionReadOnly();
    }

    private Seen seen() {
        Seen known = cached.get();
        return known == null || System.nanoTime() - known.at() > MOMENT.toNanos() ? anew() : known;
    }

    private Seen anew() {
        long now = System.nanoTime();
        long before = changes.get();
        Seen read = new Seen(
                jdbc.sql("select * from labs order by id").query(Labs::lab).list(), now);
        cached.set(read);
        if (changes.get() != before) {
            // somebody changed one while they were read: the next to ask reads again
            cached.set(null);
        }
        return read;
    }

    /** All labs, oldest first, the closed ones too; as they were a moment ago. */
    public List<Lab> all() {
        return seen().labs();
    }

    /** The labs that are in use, oldest first; as they were a moment ago. */
    public List<Lab> open() {
        return all().stream().filter(lab -> !lab.closed()).toList();
    }

    /** Whether there is more than one; while there is not, nothing has to be told apart. */
    public boolean areSeveral() {
        return all().size() > 1;
    }

    /** Does something for each lab in use, in its scope; what fails for one is logged and does not stop the others. */
    public void forEach(Consumer<Lab> work) {
        forEach(open(), work);
    }

    /** The same for the closed labs too: their records still have their time, and their lists are still owed. */
    public void forEachEvenClosed(Consumer<Lab> work) {
        forEach(all(), work);
    }

    private static void forEach(List<Lab> labs, Consumer<Lab> work) {
        for (Lab lab : labs) {
            try {
                LabScope.run(lab.id(), () -> work.accept(lab));
            } catch (RuntimeException broken) {
                LOG.error("a round for lab {} broke; it is tried again with the next round", lab.id(), broken);
            }
        }
    }

    /** The lab of that id, as it is now. */
    public Optional<Lab> find(LabId id) {
        return jdbc.sql("select * from labs where id = :id")
                .param("id", id.value())
                .query(Labs::lab)
                .optional();
    }

    /** Stores a lab that is new. */
    @Transactional
    public void add(Lab lab) {
        write("""
                insert into labs (id, college, room, name, zone, emergency_number, first_aider, stop_map)
                values (:id, :college, :room, :name, :zone, :emergency, :firstAider, :stopMap)""", lab);
    }

    /** The lab of that id as it is stored now; whoever changes it too waits until the transaction ends. */
    @Transactional(propagation = Propagation.MANDATORY)
    public Optional<Lab> lock(LabId id) {
        return jdbc.sql("select * from labs where id = :id" + locks.forChange())
                .param("id", id.value())
                .query(Labs::lab)
                .optional();
    }

    /** The same for all labs, of which one may depend on the others. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void lockAll() {
        jdbc.sql("select id from labs order by id" + locks.forChange()).query().listOfRows();
    }

    /** Stores new settings for a lab that exists. */
    @Transactional
    public void change(Lab lab) {
        write("""
                update labs set college = :college, room = :room, name = :name, zone = :zone,
                    emergency_number = :emergency, first_aider = :firstAider, stop_map = :stopMap
                where id = :id""", lab);
    }

    private void write(String sql, Lab lab) {
        jdbc.sql(sql)
                .param("college", lab.college())
                .param("room", lab.room())
                .param("name", lab.name())
                .param("zone", lab.zone().getId())
                .param("emergency", lab.emergencyNumber())
                .param("firstAider", lab.firstAider())
                .param("stopMap", lab.stopMap())
                .param("id", lab.id().value())
                .update();
        readAgain();
    }

    /** Takes a lab out of use, or into it again with null; its record stays readable. */
    @Transactional
    public void setClosed(LabId lab, @Nullable Instant at) {
        jdbc.sql("update labs set closed_at = :at where id = :id")
                .param("at", SqlTime.toSql(at), java.sql.Types.TIMESTAMP_WITH_TIMEZONE)
                .param("id", lab.value())
                .update();
        readAgain();
    }

    /** Now for the present transaction, and at its end for all others: until then they read the labs as they were. */
    private void readAgain() {
        forget();
        TransactionSynchronizationManager.registerSynchronization(new TransactionSynchronization() {
            @Override
            public void afterCompletion(int status) {
                forget();
            }
        });
    }

    private void forget() {
        changes.incrementAndGet();
        cached.set(null);
    }

    private static Lab lab(ResultSet row, int number) throws SQLException {
        return new Lab(
                new LabId(row.getObject("id", UUID.class)),
                row.getString("college"),
                row.getString("room"),
                row.getString("name"),
                ZoneId.of(row.getString("zone")),
                row.getString("emergency_number"),
                row.getString("first_aider"),
                row.getString("stop_map"),
                row.getObject("closed_at") != null);
    }
}
