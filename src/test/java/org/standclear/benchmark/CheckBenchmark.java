package org.standclear.benchmark;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.ProgramFile;
import org.standclear.core.motion.ProgramMotion;
import org.standclear.core.program.Declared;
import org.standclear.core.program.MotionPlan;
import org.standclear.core.program.MotionSheetReader;
import org.standclear.core.program.Point;

/** Measures the check: one move, whole programs, and a sampled pose beside a plain loop over the same poses. */
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(value = 1, jvmArgs = "-Xmx512m")
public class CheckBenchmark {

    private static final String JOINT = "{move: p1, speed-percent: 20}";

    static void run() throws Exception {
        new Runner(new OptionsBuilder()
                        .include(CheckBenchmark.class.getName() + "\\..*")
                        .build())
                .run();
        CheckTimes.run();
    }

    /** A whole program, read and checked. */
    @State(Scope.Thread)
    public static class Program {

        @Param({"100", "2000", "50000"})
        int steps;

        private final CellDescription cell = Sheets.cell();
        private ProgramFile file = Sheets.file(1);

        @Setup(Level.Trial)
        public void read() {
            file = Sheets.file(steps);
        }
    }

    @Benchmark
    public CheckAnswer program(Program program) {
        return Sheets.answer(program.cell, program.file);
    }

    /** One move between two points, and the poses at which its tool speed is asked for. */
    @State(Scope.Thread)
    public static class Move {

        @Param({JOINT, "{straight: p1, speed-mm-s: 90}"})
        String step = "";

        private final CellDescription cell = Sheets.cell();
        private MotionPlan plan = plan(Sheets.text(1));
        private final List<AxisValues> poses = new ArrayList<>();
        private final List<AxisValues> rates = new ArrayList<>();

        private static MotionPlan plan(String text) {
            return new MotionSheetReader().read(text).value();
        }

        @Setup(Level.Trial)
        public void read() {
            String text = Sheets.text(1);
            plan = plan(text.substring(0, text.indexOf("steps:\n")) + "steps:\n  - " + step + "\n");
            poses.clear();
            rates.clear();
            motion(new CellDescription(
                    cell.name(),
                    cell.version(),
                    (Arm) Proxy.newProxyInstance(
                            Arm.class.getClassLoader(), new Class<?>[] {Arm.class}, (proxy, method, arguments) -> {
                                if (method.getName().equals("toolSpeed")) {
                                    poses.add((AxisValues) arguments[0]);
                                    rates.add((AxisValues) arguments[1]);
                                }
                                try {
                                    return method.invoke(cell.arm(), arguments);
                                } catch (InvocationTargetException e) {
                                    throw e.getCause();
                                }
                            }),
                    cell.armFacts(),
                    cell.tools(),
                    cell.fittedTool(),
                    cell.parts(),
                    cell.limits()));
            System.out.println("poses of a move at which the tool speed is asked for: " + poses.size());
        }

        ProgramMotion motion(CellDescription on) {
            Point start = plan.point("home").orElseThrow();
            return ProgramMotion.of(on, plan, Declared.of(null, plan), start);
        }
    }

    @Benchmark
    public ProgramMotion move(Move move) {
        return move.motion(move.cell);
    }

    /** Only forward kinematics and the Jacobian's speed, for the same poses; says nothing of a straight move. */
    @Benchmark
    public double plainLoop(Move move) {
        Arm arm = move.cell.arm();
        double sum = 0;
        for (int i = 0; i < move.poses.size(); i++) {
            sum += arm.toolPose(move.poses.get(i), move.cell.fittedTool().offset())
                    .yaw();
            sum += arm.toolSpeed(
                    move.poses.get(i), move.rates.get(i), move.cell.fittedTool().offset());
        }
        return sum;
    }
}
