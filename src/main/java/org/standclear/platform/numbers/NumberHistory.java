package org.standclear.platform.numbers;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.numbers.LabNumbers.Change;
import org.standclear.platform.time.SqlTime;

/** The table of a set of numbers: one row for each change, the highest number counts. */
public final class NumberHistory<T> {

    private final JdbcClient jdbc;
    private final Labs labs;
    private final Clock clock;
    private final NumberSet<T> set;

    /** Of the lab that the present work is for. */
    public NumberHistory(JdbcClient jdbc, Labs labs, Clock clock, NumberSet<T> set) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.clock = clock;
        this.set = set;
    }

    /** What the latest change says, or the program's own numbers. */
    public T inForce() {
        return changes(1).stream().findFirst().map(Change::settings).orElse(set.defaults());
    }

    /** The latest changes, latest first. */
    public List<Change<T>> changes(int atMost) {
        return jdbc.sql("select * from " + set.table()
                        + " where lab_id = :lab order by number desc fetch first :most rows only")
                .param("lab", labs.theLab().id().value())
                .param("most", atMost)
                .query((row, number) -> new Change<>(
                        settings(row),
                        new PersonId(row.getObject("changed_by", UUID.class)),
                        SqlTime.read(row, "changed_at"),
                        row.getString("reason")))
                .list();
    }

    private T settings(ResultSet row) throws SQLException {
        List<Integer> values = new ArrayList<>();
        for (LabNumber number : set.numbers()) {
            values.add(row.getInt(number.column()));
        }
        return set.made().apply(values);
    }

    /** Whoever changes them too waits until the running transaction ends, so that no two take one number. */
    public void lock() {
        labs.lock(labs.theLab().id());
    }

    /** Adds a change in the running transaction. */
    public void add(T settings, PersonId by, String reason) {
        lock();
        List<LabNumber> numbers = set.numbers();
        String columns = numbers.stream().map(LabNumber::column).collect(Collectors.joining(", "));
        String params = numbers.stream().map(one -> ":" + one.name()).collect(Collectors.joining(", "));
        var insert = jdbc.sql("insert into " + set.table() + " (lab_id, number, " + columns
                        + ", changed_by, changed_at, reason) select cast(:lab as uuid), 1 + coalesce(max(number), 0), "
                        + params + ", :by, :at, :reason from " + set.table() + " where lab_id = :lab")
                .param("lab", labs.theLab().id().value())
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .param("reason", reason);
        List<Integer> values = set.values().apply(settings);
        for (int i = 0; i < numbers.size(); i++) {
            insert = insert.param(numbers.get(i).name(), values.get(i));
        }
        insert.update();
    }
}
