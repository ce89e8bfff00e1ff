package org.standclear.benchmark.growth;

import java.net.URI;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.annotation.DirtiesContext;
import org.standclear.platform.time.LabTime;
import org.standclear.testing.DemoOnH2;
import org.standclear.testing.DemoOnPostgres;
import org.standclear.testing.TestDatabase;
import org.standclear.testing.reads.CountsReads;
import org.standclear.testing.reads.RowsRead;

/**
 * Pages read as many rows when a lab has twenty times the bookings, on both engines. Rows are what the engine says that it
 * read when it carries a statement out, which does not depend on how busy the machine is.
 */
class PageGrowthIT {

    private static final int MANY = 20_000;

    /** The target for times, taken for rows. */
    private static final double AS_MUCH = 1.5;

    /** A page may read so few rows whatever it read before: a name here and there, and H2 reads small tables whole. */
    private static final long FEW = 1_500;

    /**
     * They use more, up to an end: of what is due a thousand of a kind, of the log the latest 1,200 releases, of the report
     * what its weeks hold, which reach before the term to busier ones.
     */
    private static final Map<String, Long> TO_AN_END = Map.of(
            "what is due to be disposed of", 10_000L,
            "forecast of a due date", 80_000L,
            "term report, as it opens", 40_000L);

    abstract static class OnAnEngine {

        @LocalServerPort
        int port;

        @Autowired
        RowsRead reads;

        @Autowired
        LabTime labTime;

        @Value("${spring.datasource.url}")
        String url;

        @Value("${spring.datasource.username}")
        String user;

        @Test
        void readNoMoreWithTwentyTimesTheBookings() {
            TestDatabase database = new TestDatabase(url, user, "");
            PlantedPast.into(database, Past.TERM);
            Map<String, Map<String, Long>> few = read(database, Past.TERM);
            PlantedPast.before(database, MANY);
            Map<String, Map<String, Long>> many = read(database, MANY);
            SoftAssertions all = new SoftAssertions();
            few.forEach((page, before) -> {
                Map<String, Long> after = Objects.requireNonNull(many.get(page));
                System.out.println(page + ": " + sum(before) + ", " + sum(after) + " rows");
                long asMuch = Math.max(sum(before) + FEW, Math.round(sum(before) * AS_MUCH));
                all.assertThat(sum(after))
                        .as("rows of %s, %d before; %s", page, sum(before), more(before, after))
                        .isLessThanOrEqualTo(TO_AN_END.getOrDefault(page, asMuch));
            });
            all.assertAll();
        }

        private Map<String, Map<String, Long>> read(TestDatabase database, int size) {
            LocalDate today = labTime.today();
            GrownLab lab = GrownLab.at(URI.create("http://localhost:" + port), database, size);
            Map<String, Map<String, Long>> read = new LinkedHashMap<>();
            for (GrowthPage page : GrowthPage.all(today)) {
                // the first time it may look up its own address, and H2 its plans
                lab.time(page);
                read.put(page.name(), reads.of(() -> lab.time(page)));
            }
            return read;
        }

        private static long sum(Map<String, Long> rows) {
            return rows.values().stream().mapToLong(Long::longValue).sum();
        }

        private static List<String> more(Map<String, Long> before, Map<String, Long> after) {
            return after.entrySet().stream()
                    .filter(one -> one.getValue() > 2 * before.getOrDefault(one.getKey(), 0L) + 50)
                    .map(one -> before.getOrDefault(one.getKey(), 0L) + " -> " + one.getValue() + " " + one.getKey())
                    .toList();
        }
    }

    /** Twenty thousand bookings in memory would stay with the tests that come after. */
    @Nested
    @DirtiesContext
    @DemoOnH2
    @Import(CountsReads.class)
    class OnH2 extends OnAnEngine {

        @AfterEach
        void letGo(@Autowired JdbcClient jdbc) {
            jdbc.sql("shutdown").update();
        }
    }

    @Nested
    @DirtiesContext
    @DemoOnPostgres
    @Import(CountsReads.class)
    class OnPostgresql extends OnAnEngine {}
}
