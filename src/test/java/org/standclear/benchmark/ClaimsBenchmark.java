package org.standclear.benchmark;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.sql.DataSource;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.MakeBooking;
import org.standclear.booking.Slot;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;

/** Measures bookings through the service, rules, locks and record included, beside the same inserts by plain JDBC. */
final class ClaimsBenchmark {

    private static final int AT_ONCE = 16;
    private static final int ROUNDS = 20;
    private static final int SERIES = 5;
    private static final int WARM_UPS = 10;
    private static final int PEOPLE_EACH = 10;

    private final String engine;
    private final BusyLab lab;
    private final BookingDesk desk;
    private final JdbcClient jdbc;
    private final PlainInserts plain;
    private int loads;

    private ClaimsBenchmark(String engine, ConfigurableApplicationContext application) throws Exception {
        this.engine = engine;
        lab = new BusyLab(application, AT_ONCE * PEOPLE_EACH * 2);
        desk = application.getBean(BookingDesk.class);
        jdbc = application.getBean(JdbcClient.class);
        byService(0, 0);
        String facts = jdbc.sql("select facts from trail_entries where kind = 'booking.made'")
                .query(String.class)
                .single();
        plain = new PlainInserts(
                application.getBean(DataSource.class),
                application.getBean(Labs.class).theLab().id().value(),
                facts);
        loads = 1;
    }

    static void run(Engine engine) throws Exception {
        try (engine;
                ConfigurableApplicationContext application = RunningApplication.on(engine.database())) {
            new ClaimsBenchmark(engine.name(), application).measure();
        }
    }

    private void measure() throws Exception {
        System.out.println("\nbookings, " + AT_ONCE + " at once on " + engine + "\n\n" + Timings.head());
        warmUp();
        List<Double> withRecord = new ArrayList<>();
        List<Double> withoutRecord = new ArrayList<>();
        for (int series = 0; series < SERIES; series++) {
            Timings service = load(this::byService);
            Timings same = load((who, round) -> byPlainInserts(who, round, true));
            Timings fewer = load((who, round) -> byPlainInserts(who, round, false));
            System.out.println(service.row("booking service, " + engine));
            System.out.println(same.row("the same inserts, " + engine));
            System.out.println(fewer.row("the same without the record, " + engine));
            withRecord.add(service.perSecond() / same.perSecond());
            withoutRecord.add(service.perSecond() / fewer.perSecond());
        }
        withRecord.sort(null);
        withoutRecord.sort(null);
        System.out.printf(
                Locale.ROOT,
                "%nservice at %.2f of the same inserts, %.2f of those without the record (medians of %d);"
                        + " claims on instants that another has: %d%n",
                withRecord.get(SERIES / 2),
                withoutRecord.get(SERIES / 2),
                SERIES,
                doubleClaims());
    }

    /** A lab's server runs for weeks: what it does in its first seconds, while it is being compiled, is not measured. */
    private void warmUp() throws Exception {
        for (int i = 0; i < WARM_UPS; i++) {
            load(this::byService);
        }
        load((who, round) -> byPlainInserts(who, round, true));
        load((who, round) -> byPlainInserts(who, round, false));
    }

    private Timings load(Load.Act act) throws Exception {
        loads++;
        return Load.run(AT_ONCE, ROUNDS, act);
    }

    private boolean byService(int who, int round) {
        Slot slot = slot(who, round);
        var outcome = desk.book(new MakeBooking(
                slot.cell(),
                slot.start(),
                operator(who, round),
                attendant(who, round),
                null,
                null,
                operator(who, round)));
        if (outcome instanceof BookingDesk.Outcome.Refused refused) {
            System.err.println(refused.says());
        }
        return outcome instanceof BookingDesk.Outcome.Booked;
    }

    private boolean byPlainInserts(int who, int round, boolean withRecord) throws Exception {
        return plain.insert(slot(who, round), operator(who, round), attendant(who, round), withRecord);
    }

    /** A slot that nobody else asks for: four people share a cell, and each load has slots of its own. */
    private Slot slot(int who, int round) {
        return lab.slot(who, (loads * ROUNDS + round) * AT_ONCE / 4 + who / 4);
    }

    private PersonId operator(int who, int round) {
        return lab.person((who * PEOPLE_EACH + round % PEOPLE_EACH) * 2);
    }

    private PersonId attendant(int who, int round) {
        return lab.person((who * PEOPLE_EACH + round % PEOPLE_EACH) * 2 + 1);
    }

    private int doubleClaims() {
        return jdbc.sql("""
                select count(*) from booking_claims a join booking_claims b on a.subject = b.subject and a.id < b.id
                    and a.starts_at < b.ends_at and b.starts_at < a.ends_at""").query(Integer.class).single();
    }
}
