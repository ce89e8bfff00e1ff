package org.standclear.signoff.records;

import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.ids.PersonId;

/**
 * Lets acts that bind the same person to a run follow one another, whatever cells and labs they are at: the database's
 * indexes see one person twice at e-stops or twice as operators, but not one who operates here and attends there.
 */
@Component
class PeopleLocks {

    private static final int SLOTS = 16;

    private final JdbcClient jdbc;

    PeopleLocks(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Waits until nobody else binds any of these people, and keeps others from it until the transaction ends. Taken after
     * the locks of booking and cell, always in the same order, so that no two wait for each other.
     */
    void take(List<PersonId> people) {
        for (int slot : people.stream()
                .mapToInt(person -> Math.floorMod(person.value().hashCode(), SLOTS))
                .distinct()
                .sorted()
                .toArray()) {
            jdbc.sql("select slot from signoff_people_locks where slot = :slot for update")
                    .param("slot", slot)
                    .query(Integer.class)
                    .single();
        }
    }
}
