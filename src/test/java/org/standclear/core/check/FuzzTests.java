package org.standclear.core.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.CellFileReader;
import org.standclear.core.limits.ContactTableReader;
import org.standclear.core.limits.CourseLimits;
import org.standclear.core.program.DeclarationReader;
import org.standclear.core.program.MotionPlan;
import org.standclear.core.program.MotionSheetReader;
import org.standclear.core.program.ProgramReader;
import org.standclear.core.program.blocks.BlockReader;
import org.standclear.core.program.phrases.Phrasebook;
import org.standclear.core.program.phrases.PhrasebookReader;
import org.standclear.core.text.Reading;

/**
 * Whatever a file holds: no exception leaves a reader or the check, nothing that is not understood as a whole is within
 * limits, and no case takes more than {@value #MOST_SECONDS} s of processor time. A fixed seed; {@code mvn -Pfuzz test} runs 100,000
 * cases a reader in a heap of 256 MB, so that a case that needs more ends the run.
 */
@Timeout(value = 2, unit = TimeUnit.HOURS)
class FuzzTests {

    private static final long SEED = 20261127;
    private static final int CASES = Integer.getInteger("fuzz.cases", 1000);
    private static final double BUDGET_SECONDS = Integer.getInteger("fuzz.seconds", 6);
    private static final double MOST_SECONDS = 2;
    private static final Path SEED_DATA = Path.of("seed-data");

    private static final CellDescription SCARA = cell("avocet");
    private static final CellDescription GANTRY = cell("dunlin");
    private static final Phrasebook BOOK = Phrasebook.read(text(SEED_DATA.resolve("phrasebooks/plain-words.yaml")))
            .value();

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> texts(String folder, String ending) {
        try (Stream<Path> files = Files.list(SEED_DATA.resolve(folder))) {
            return files.filter(file -> file.toString().endsWith(ending))
                    .sorted()
                    .map(FuzzTests::text)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static CellDescription cell(String name) {
        return CellFileReader.read(text(SEED_DATA.resolve("cells/" + name + ".yaml")))
                .value();
    }

    /** One kind of file under fuzz. */
    private record Fuzz(String name, List<String> samples, Function<String, Outcome> run) {

        void all() {
            Random random = new Random(SEED);
            FuzzText texts = new FuzzText(random, samples);
            // classes are loaded before anything is timed
            outcome(samples.get(0));
            long begin = System.nanoTime();
            int[] counts = new int[Outcome.values().length];
            double slowest = 0;
            int done = 0;
            while (done < CASES && seconds(begin) < BUDGET_SECONDS) {
                String text = texts.next();
                boolean hasUnknown = random.nextInt(4) == 0;
                String whole = hasUnknown ? texts.withUnknownLine(text) : text;
                long start = processorTime();
                Outcome outcome = outcome(whole);
                double seconds = (processorTime() - start) / 1e9;
                slowest = Math.max(slowest, seconds);
                assertThat(seconds).as("%s, case %d:%n%s", name, done, whole).isLessThan(MOST_SECONDS);
                assertThat(hasUnknown && outcome == Outcome.WITHIN)
                        .as("%s, case %d is within:%n%s", name, done, whole)
                        .isFalse();
                counts[outcome.ordinal()]++;
                done++;
            }
            System.out.printf(
                    "FuzzTests: %s, seed %d, %d cases in %.1f s, slowest %.3f s, refused %d, read %d, within %d, not within %d%n",
                    name, SEED, done, seconds(begin), slowest, counts[0], counts[1], counts[2], counts[3]);
            assertThat(done).isPositive();
        }

        private Outcome outcome(String text) {
            try {
                return run.apply(text);
            } catch (RuntimeException | StackOverflowError e) {
                throw new AssertionError(name + " throws for:\n" + text, e);
            }
        }

        /** Of this thread: what else the machine does is no fault of a case. */
        private static long processorTime() {
            return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        }

        private static double seconds(long since) {
            return (System.nanoTime() - since) / 1e9;
        }
    }

    private enum Outcome {
        REFUSED,
        READ,
        WITHIN,
        NOT_WITHIN
    }

    private static Outcome checked(CellDescription cell, ProgramReader reader, String text) {
        ProgramFile file = new ProgramFile(text, "0".repeat(64));
        CheckRequest request =
                new CheckRequest(cell, file, reader, null, CourseLimits.NONE, ContactTableReader.shipped());
        Reading<CheckAnswer> reading = ProgramCheck.check(request);
        if (reading.badInput().isPresent()) {
            assertThat(reading.badInput().get().says()).isNotBlank();
            return Outcome.REFUSED;
        }
        CheckAnswer answer = reading.value();
        MotionPlan.Coverage coverage = answer.program().plan().coverage();
        boolean whole = coverage.notUnderstood().isEmpty() && coverage.linesUnderstood() == coverage.linesTotal();
        boolean within = answer.answer() == CheckAnswer.Answer.WITHIN;
        assertThat(within && !whole).as(text).isFalse();
        assertThat(JsonText.of(AnswerDocument.of(answer))).isNotBlank();
        return within ? Outcome.WITHIN : Outcome.NOT_WITHIN;
    }

    private static Outcome read(Reading<?> reading) {
        return reading.badInput().isPresent() ? Outcome.REFUSED : Outcome.READ;
    }

    @Test
    void motionSheets() {
        new Fuzz("motion sheets", texts("programs", ".yaml"), text -> checked(SCARA, new MotionSheetReader(), text))
                .all();
    }

    @Test
    void blocks() {
        List<String> samples = List.of(text(SEED_DATA.resolve("programs/gantry-sort-blocks.txt")), """
                (point home X0 Y300 Z80 C0)
                ; declaration
                ; power: reduced
                ; override-percent: 50
                ; tool: V-02
                ; part-kg: 0.08
                ; start: home
                ; end declaration
                N10 G17 G21 G90
                N20 G0 X10 Y250 Z60
                N30 G3 X10 Y250 I30 J0 F1200
                N40 G2 X50 Y250 R20
                N50 G2 X90 Y250 Z70 R-30 F600
                N60 G91 G1 X-10 Y5
                N70 G90 G20 G1 X1 Y9.5 F30
                N80 G4 X1.5
                M2
                """);
        new Fuzz("blocks", samples, text -> checked(GANTRY, new BlockReader(), text)).all();
    }

    @Test
    void blocksWithPostures() {
        List<String> samples = List.of("""
                ; declaration
                ; power: reduced
                ; override-percent: 50
                ; max-tool-speed-mm-s: 200
                ; tool: G-02
                ; part-kg: 0.06
                ; start: home
                ; end declaration
                (point home X0 Y300 Z80 C0 elbow right)
                (posture elbow right)
                G21 G90
                G1 X-120 Y220 F3000
                N20 G1 Z20 F1200
                G4 P500
                G2 X-100 Y240 R60
                (posture elbow left)
                G0 X-100 Y240 Z40
                M30
                """);
        new Fuzz("blocks with postures", samples, text -> checked(SCARA, new BlockReader(), text)).all();
    }

    @Test
    void programsByAPhrasebook() {
        PhrasebookReader reader = new PhrasebookReader(BOOK);
        new Fuzz(
                        "programs by a phrasebook",
                        texts("programs/plain-words", ".txt"),
                        text -> checked(SCARA, reader, text))
                .all();
    }

    @Test
    void cellFiles() {
        String sheet = text(SEED_DATA.resolve("programs/peg-and-plate.yaml"));
        new Fuzz("cell files", texts("cells", ".yaml"), text -> {
                    Reading<CellDescription> cell = CellFileReader.read(text);
                    return cell.badInput().isPresent()
                            ? Outcome.REFUSED
                            : checked(cell.value(), new MotionSheetReader(), sheet);
                })
                .all();
    }

    @Test
    void declarations() {
        List<String> samples = List.of(
                "power: reduced\noverride-percent: 50\nmax-tool-speed-mm-s: 200\ntool: G-02\npart-kg: 0.06\nloop: 5\nstart: home\n",
                "power: full\nloop: forever\n");
        new Fuzz("declarations", samples, text -> read(DeclarationReader.read(text))).all();
    }

    @Test
    void phrasebooks() {
        String program = texts("programs/plain-words", ".txt").get(0);
        new Fuzz("phrasebooks", texts("phrasebooks", ".yaml"), text -> {
                    Reading<Phrasebook> book = Phrasebook.read(text);
                    if (book.badInput().isPresent()) {
                        return Outcome.REFUSED;
                    }
                    assertThat(book.value().meanings(program)).isNotNull();
                    checked(SCARA, new PhrasebookReader(book.value()), program);
                    return Outcome.READ;
                })
                .all();
    }

    /** The samples as bytes that are no text any more. */
    @Test
    void bytes() {
        Random random = new Random(SEED);
        List<String> samples = texts("programs", ".yaml");
        for (int i = 0; i < CASES; i++) {
            byte[] bytes = samples.get(random.nextInt(samples.size())).getBytes(StandardCharsets.UTF_8);
            for (int k = 0; k < 3; k++) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            Reading<ProgramFile> file = ProgramFile.of(bytes);
            if (file.badInput().isEmpty()) {
                checked(
                        SCARA,
                        ReaderChoice.of(file.value().text(), BOOK),
                        file.value().text());
            }
        }
    }
}
