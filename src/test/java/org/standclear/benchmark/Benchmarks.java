package org.standclear.benchmark;

import java.util.List;

/** Runs the measurements named on the command line, or all of them. */
public final class Benchmarks {

    private Benchmarks() {}

    /** Takes any of: start. */
    public static void main(String[] names) throws Exception {
        List<String> wanted = List.of(names.length == 1 ? names[0].split(",") : names);
        if (wanted.contains("start")) {
            StartBenchmark.run();
        }
    }
}
