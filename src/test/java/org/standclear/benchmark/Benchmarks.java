package org.standclear.benchmark;

import java.util.List;
import org.standclear.benchmark.burst.BurstBenchmark;
import org.standclear.benchmark.growth.GrowthBenchmark;
import org.standclear.booking.allocation.solver.AllocationBenchmark;

/** Runs the measurements named on the command line. */
public final class Benchmarks {

    private Benchmarks() {}

    /**
     * Takes any of start, pages, booking, check, claims, claims-h2, burst, growth, growth-h2, roster, roster-h2, allocation
     * and allocation-stress; one after the other, joined by commas.
     */
    public static void main(String[] names) throws Exception {
        List<String> wanted = List.of(String.join(",", names).split(","));
        if (wanted.contains("start")) {
            StartBenchmark.run();
        }
        if (wanted.contains("pages")) {
            PagesBenchmark.run(Engine.h2());
            PagesBenchmark.run(Engine.postgresql());
        }
        if (wanted.contains("booking")) {
            BookingPostBenchmark.run(Engine.h2());
            BookingPostBenchmark.run(Engine.postgresql());
        }
        if (wanted.contains("check")) {
            CheckBenchmark.run();
        }
        if (wanted.contains("claims") || wanted.contains("claims-h2")) {
            ClaimsBenchmark.run(Engine.h2());
            if (wanted.contains("claims")) {
                ClaimsBenchmark.run(Engine.postgresql());
            }
        }
        manyAtOnceAndMany(wanted);
    }

    private static void manyAtOnceAndMany(List<String> wanted) throws Exception {
        if (wanted.contains("burst")) {
            BurstBenchmark.run();
        }
        if (wanted.contains("growth")) {
            GrowthBenchmark.onPostgresql();
        }
        if (wanted.contains("growth-h2")) {
            GrowthBenchmark.onH2();
        }
        if (wanted.contains("roster")) {
            RosterBenchmark.onPostgresql();
        }
        if (wanted.contains("roster-h2")) {
            RosterBenchmark.onH2();
        }
        for (String size : List.of("college", "stress")) {
            if (wanted.contains(size.equals("college") ? "allocation" : "allocation-stress")) {
                AllocationBenchmark.inProcessOfItsOwn(size);
            }
        }
    }
}
