package org.standclear.platform.database;

import org.springframework.stereotype.Component;

/**
 * How a query locks rows for whoever changes them too, and for nobody else.
 *
 * <p>On PostgreSQL {@code for update} also stops everybody who stores a row that refers to the locked one, since a foreign
 * key locks what it refers to. Every act refers to its lab when it appends to the record, as the last thing that it does and
 * with the record's head in its hands, so that a plain lock on the lab takes the two in the other order. A report refers to
 * its cell and its booking, which gates have in their hands. H2 locks no row for a foreign key, and has only the one kind.
 *
 * <p>Not for a gate that reads rows which refer to the locked one and are stored by acts that do not lock it themselves: it
 * has to wait for them, to see them.
 */
@Component
public class RowLocks {

    private final Engine engine;

    RowLocks(Engine engine) {
        this.engine = engine;
    }

    /** The end of a query whose rows are going to be changed, or stand for what is; never for rows that are deleted. */
    public String forChange() {
        return engine.isPostgres() ? " for no key update" : " for update";
    }
}
