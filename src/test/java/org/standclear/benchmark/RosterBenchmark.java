package org.standclear.benchmark;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.standclear.people.CourseRegister;
import org.standclear.people.RosterImports;
import org.standclear.people.RosterImports.Preview;
import org.standclear.people.RosterImports.Read;
import org.standclear.platform.ids.PersonId;

/** Measures the longest roster that is taken: read, previewed, applied and taken back, in a new database. */
final class RosterBenchmark {

    private static final int SECTIONS = 50;
    private static final int FEW = 80;
    private static final int LINES = Integer.getInteger("benchmark.lines", RosterImports.MOST_LINES);
    private static final int MOST_STATEMENTS = 8;

    private final JdbcClient jdbc;
    private final RosterImports rosters;
    private final boolean counts;
    private final PersonId by = PersonId.next();

    private RosterBenchmark(ConfigurableApplicationContext application, boolean counts) {
        jdbc = application.getBean(JdbcClient.class);
        rosters = application.getBean(RosterImports.class);
        this.counts = counts;
        CourseRegister courses = application.getBean(CourseRegister.class);
        courses.addCourse("R", "Robots", null);
    }

    static void onPostgresql() throws Exception {
        try (Engine engine = Engine.countingPostgresql()) {
            JdbcClient database = JdbcClient.create(new DriverManagerDataSource(
                    engine.database().url(),
                    engine.database().user(),
                    engine.database().password()));
            database.sql("create extension if not exists pg_stat_statements").update();
            // with what the checks of keys read
            database.sql("alter database postgres set pg_stat_statements.track = 'all'")
                    .update();
            run(engine, true);
        }
    }

    static void onH2() throws Exception {
        try (Engine engine = Engine.h2File()) {
            run(engine, false);
        }
    }

    private static void run(Engine engine, boolean counts) throws Exception {
        try (ConfigurableApplicationContext application = RunningApplication.on(engine.database())) {
            System.out.println("\na roster of " + LINES + " lines, " + engine.name() + "\n");
            new RosterBenchmark(application, counts).measure();
        }
    }

    private void measure() throws Exception {
        byte[] file = ("login,name,email,course,section,team\n"
                        + IntStream.range(0, LINES)
                                .mapToObj(i -> "s%1$05d,Student %1$05d,s%1$05d@quillhaven.example,R,%2$02d,T%3$05d"
                                        .formatted(i, i % SECTIONS, i / 2))
                                .collect(Collectors.joining("\n")))
                .getBytes(StandardCharsets.UTF_8);
        aFewPeople();
        UUID id = timed("read", () -> ((Read.Kept) rosters.read(file, "term.csv", by)).id());
        Preview preview = timed("preview", () -> rosters.preview(id).orElseThrow());
        require(preview.added().size() == LINES, "everybody is new");
        timed("apply", () -> {
            require(rosters.apply(id, false, preview.fingerprint(), by).isEmpty(), "applied");
            return id;
        });
        require(enrolled() == LINES + FEW, "everybody is enrolled");
        timed("preview when applied", () -> rosters.preview(id).orElseThrow());
        timed("take back", () -> {
            require(rosters.undo(id, by).isEmpty(), "taken back");
            return id;
        });
        require(enrolled() == FEW, "none of them is enrolled any more");
    }

    /** A small college, which the database has looked at: what it has planned for that goes on for a while. */
    private void aFewPeople() {
        byte[] few = ("login,name,email,course,section,team\n"
                        + IntStream.range(0, FEW)
                                .mapToObj(i -> "f%1$02d,Few %1$02d,f%1$02d@quillhaven.example,R,00,F%2$02d"
                                        .formatted(i, i / 2))
                                .collect(Collectors.joining("\n")))
                .getBytes(StandardCharsets.UTF_8);
        UUID id = ((Read.Kept) rosters.read(few, "few.csv", by)).id();
        require(
                rosters.apply(id, false, rosters.preview(id).orElseThrow().fingerprint(), by)
                        .isEmpty(),
                "a few are there");
        if (counts) {
            jdbc.sql("analyze").update();
        }
    }

    private int enrolled() {
        return jdbc.sql("select count(*) from enrolments").query(Integer.class).single();
    }

    private static void require(boolean met, String what) {
        if (!met) {
            throw new IllegalStateException("not so: " + what);
        }
    }

    private <T> T timed(String what, Callable<T> act) throws Exception {
        if (counts) {
            jdbc.sql("select pg_stat_statements_reset()")
                    .query((row, number) -> "")
                    .list();
        }
        long before = System.nanoTime();
        T result = act.call();
        System.out.printf(Locale.ROOT, "%s: %.1f s%n", what, (System.nanoTime() - before) / 1e9);
        if (counts) {
            tellStatements();
        }
        return result;
    }

    private void tellStatements() {
        jdbc.sql("""
                select calls, round(cast(total_exec_time as numeric)) as ms, shared_blks_hit + shared_blks_read as blocks,
                    query
                from pg_stat_statements where query not like '%pg_stat_statements%'
                order by total_exec_time desc limit :most""")
                .param("most", MOST_STATEMENTS)
                .query((row, number) -> String.format(
                        Locale.ROOT,
                        "  %7d calls %7d ms %10d blocks  %.110s",
                        row.getLong("calls"),
                        row.getLong("ms"),
                        row.getLong("blocks"),
                        row.getString("query").replaceAll("\\s+", " ")))
                .list()
                .forEach(System.out::println);
    }
}
