package org.standclear.benchmark;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.standclear.testing.TestDatabase;

/** Measures how long a person waits from starting the packaged jar to the first page, and the memory it then has. */
final class StartBenchmark {

    private static final int STARTS = 5;

    private StartBenchmark() {}

    static void run() throws Exception {
        List<Long> millis = new ArrayList<>();
        List<Long> memory = new ArrayList<>();
        for (int i = 0; i < STARTS; i++) {
            try (PackagedApplication application = PackagedApplication.start(TestDatabase.freshH2())) {
                millis.add(application.untilFirstPage().toMillis());
                Thread.sleep(2_000);
                memory.add(application.residentMiB());
            }
        }
        System.out.println("start to first page, ms, " + STARTS + " starts: " + millis + ", median " + median(millis));
        System.out.println("memory 2 s after the first page, MiB: " + memory + ", median " + median(memory));
    }

    private static long median(List<Long> values) {
        List<Long> sorted = new ArrayList<>(values);
        Collections.sort(sorted);
        return sorted.get(sorted.size() / 2);
    }
}
