package org.standclear.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.testing.OnH2;
import org.standclear.testing.TestDatabase;

/** What the migrations leave behind keeps the rules for tables. */
@OnH2
class SchemaIT {

    @Autowired
    JdbcClient jdbc;

    /** H2 calls a constraint without a name CONSTRAINT_ and a number. */
    private static List<String> unnamedConstraints(JdbcClient jdbc) {
        return jdbc.sql("""
                select table_name || ' ' || constraint_type || ' ' || constraint_name
                from information_schema.table_constraints
                where table_schema = 'PUBLIC' and regexp_like(constraint_name, '^CONSTRAINT_[0-9A-F_]+$')
                  and table_name <> 'flyway_schema_history'""").query(String.class).list();
    }

    @Test
    void everyConstraintHasAName() {
        assertThat(jdbc.sql("select count(*) from information_schema.table_constraints")
                        .query(Integer.class)
                        .single())
                .isGreaterThan(3);
        assertThat(unnamedConstraints(jdbc)).isEmpty();
    }

    @Test
    void catchesOneWithout() {
        JdbcClient planted = JdbcClient.create(new org.springframework.jdbc.datasource.DriverManagerDataSource(
                TestDatabase.freshH2().url(), "sa", ""));
        planted.sql("create table cells (id uuid primary key, lab uuid, constraint cells_lab_ck check (lab <> id))")
                .update();

        assertThat(unnamedConstraints(planted)).singleElement().asString().startsWith("CELLS PRIMARY KEY");
    }
}
