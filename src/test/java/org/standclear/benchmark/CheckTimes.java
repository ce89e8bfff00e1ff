package org.standclear.benchmark;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import org.standclear.core.CellText;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.check.ProgramFile;

/** Processor time of whole checks, which a loaded machine falsifies less, and the command line from cold. */
final class CheckTimes {

    private static final int STARTS = 7;

    private CheckTimes() {}

    static void run() throws Exception {
        CellDescription cell = Sheets.cell();
        processorTime(cell, 2_000, 60);
        for (int steps : new int[] {100, 2_000, 10_000, 50_000}) {
            double median = processorTime(cell, steps, Math.max(5, 40_000 / steps));
            System.out.printf(
                    Locale.ROOT,
                    "%d steps: median %.1f ms of processor time, %.1f us a step%n",
                    steps,
                    median,
                    1000 * median / steps);
        }
        commandLine();
    }

    private static double processorTime(CellDescription cell, int steps, int rounds) {
        ProgramFile file = Sheets.file(steps);
        double[] millis = new double[rounds];
        for (int i = 0; i < rounds; i++) {
            long begin = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            Sheets.answer(cell, file);
            millis[i] = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - begin) / 1e6;
        }
        Arrays.sort(millis);
        return millis[rounds / 2];
    }

    private static void commandLine() throws Exception {
        Path folder = Files.createTempDirectory("check");
        Path cell =
                Files.writeString(folder.resolve("cell.yaml"), CellText.scara().text());
        Path program = Files.writeString(folder.resolve("program.yaml"), Sheets.text(50));
        double[] wall = new double[STARTS];
        int[] statuses = new int[STARTS];
        for (int i = 0; i < STARTS; i++) {
            long begin = System.nanoTime();
            Process process = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-jar",
                            Path.of("target", "standclear.jar").toString(),
                            "check",
                            "--cell",
                            cell.toString(),
                            program.toString())
                    .redirectOutput(folder.resolve("answer").toFile())
                    .redirectError(ProcessBuilder.Redirect.INHERIT)
                    .start();
            statuses[i] = process.waitFor();
            wall[i] = (System.nanoTime() - begin) / 1e9;
        }
        Arrays.sort(wall);
        System.out.printf(
                Locale.ROOT,
                "command line from cold, 50 steps: median %.2f s, least %.2f s; exit status %s%n",
                wall[STARTS / 2],
                wall[0],
                Arrays.toString(statuses));
    }
}
