package org.standclear.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.standclear.testing.TestDatabase;

/** Measures how long a person waits from starting the packaged jar to the first page, and the memory it then has. */
final class StartBenchmark {

    private static final int STARTS = 5;
    private static final String JAR = Path.of("target", "standclear.jar").toString();

    private StartBenchmark() {}

    static void run() throws Exception {
        Path prepared = Files.createTempDirectory("prepared");
        ProcessBuilder prepare = new ProcessBuilder("docs/deploy/prepare.sh", JAR, prepared.toString()).inheritIO();
        // an archive fits only the Java that it was made with
        prepare.environment().put("JAVA_HOME", System.getProperty("java.home"));
        Process preparing = prepare.start();
        if (preparing.waitFor() != 0) {
            throw new IllegalStateException("docs/deploy/prepare.sh ended with " + preparing.exitValue());
        }
        measure("the jar as it is", List.of("-jar", JAR));
        measure(
                "prepared by docs/deploy/prepare.sh",
                List.of(
                        "@" + prepared.resolve("start.options"),
                        "-jar",
                        prepared.resolve("standclear.jar").toString()));
        measure("the jar with the demo college", List.of("-jar", JAR, "--spring.profiles.active=demo"));
    }

    private static void measure(String what, List<String> launch) throws Exception {
        List<Long> millis = new ArrayList<>();
        List<Long> processor = new ArrayList<>();
        List<Long> memory = new ArrayList<>();
        for (int i = 0; i < STARTS; i++) {
            try (PackagedApplication application = PackagedApplication.start(newFile(), launch)) {
                millis.add(application.untilFirstPage().toMillis());
                processor.add(application.processorTime().toMillis());
                Thread.sleep(2_000);
                memory.add(application.residentMiB());
            }
        }
        System.out.println(what + ", to the first page, ms: " + millis + ", median " + median(millis));
        System.out.println(what + ", processor time until then, ms: " + processor + ", median " + median(processor));
        System.out.println(what + ", memory 2 s later, MiB: " + memory + ", median " + median(memory));
    }

    /** The address of the settings that are shipped, in a folder of its own. */
    private static TestDatabase newFile() throws IOException {
        return new TestDatabase(
                "jdbc:h2:file:" + Files.createTempDirectory("start").resolve("standclear")
                        + ";DB_CLOSE_ON_EXIT=FALSE;QUERY_CACHE_SIZE=512;WRITE_DELAY=0",
                "sa",
                "");
    }

    private static long median(List<Long> values) {
        List<Long> sorted = new ArrayList<>(values);
        Collections.sort(sorted);
        return sorted.get(sorted.size() / 2);
    }
}
