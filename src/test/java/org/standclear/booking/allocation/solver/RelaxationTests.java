package org.standclear.booking.allocation.solver;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.ortools.Loader;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What prices prove, against every solution of small models: numbers from none to two, rules and costs by chance. */
class RelaxationTests {

    private static final int NUMBERS = 6;
    private static final int MOST = 2;

    private final CpModel model = new CpModel();
    private final List<int[]> weights = new ArrayList<>();
    private final List<Integer> most = new ArrayList<>();
    private final int[] costs = new int[NUMBERS];
    private int atLeast;

    @BeforeAll
    static void loadTheSolver() {
        Loader.loadNativeLibraries();
    }

    private void make(Random chance) {
        IntVar[] numbers = new IntVar[NUMBERS];
        LinearExprBuilder cost = LinearExpr.newBuilder();
        LinearExprBuilder all = LinearExpr.newBuilder();
        for (int number = 0; number < NUMBERS; number++) {
            numbers[number] = model.newIntVar(0, MOST, "");
            costs[number] = chance.nextInt(5) - 1;
            cost.addTerm(numbers[number], costs[number]);
            all.add(numbers[number]);
        }
        for (int rule = 0; rule < 4; rule++) {
            LinearExprBuilder sum = LinearExpr.newBuilder();
            int[] these = new int[NUMBERS];
            for (int number = 0; number < NUMBERS; number++) {
                these[number] = chance.nextInt(3);
                sum.addTerm(numbers[number], these[number]);
            }
            weights.add(these);
            most.add(3 + chance.nextInt(4));
            model.addLessOrEqual(sum, most.get(rule));
        }
        atLeast = 2;
        model.addGreaterOrEqual(all, atLeast);
        model.minimize(cost);
    }

    private List<int[]> solutions() {
        List<int[]> solutions = new ArrayList<>();
        for (int code = 0; code < Math.pow(MOST + 1, NUMBERS); code++) {
            int[] numbers = new int[NUMBERS];
            int rest = code;
            int all = 0;
            for (int number = 0; number < NUMBERS; number++) {
                numbers[number] = rest % (MOST + 1);
                all += numbers[number];
                rest /= MOST + 1;
            }
            boolean keeps = all >= atLeast;
            for (int rule = 0; rule < weights.size(); rule++) {
                keeps = keeps && dot(weights.get(rule), numbers) <= most.get(rule);
            }
            if (keeps) {
                solutions.add(numbers);
            }
        }
        return solutions;
    }

    private static int dot(int[] one, int[] other) {
        int sum = 0;
        for (int index = 0; index < one.length; index++) {
            sum += one[index] * other[index];
        }
        return sum;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void whatAnyPricesProveHoldsForEverySolution(long seed) {
        Random chance = new Random(seed);
        make(chance);
        Relaxation relaxation = new Relaxation(model.model());
        List<int[]> solutions = solutions();
        int least = solutions.stream()
                .mapToInt(numbers -> dot(costs, numbers))
                .min()
                .orElseThrow();
        Relaxation.Prices best = Objects.requireNonNull(relaxation.solve(10));
        double[] byChance = chance.doubles(weights.size() + 1, -2, 2).toArray();

        for (Relaxation.Prices prices : List.of(best, relaxation.proven(byChance))) {
            assertThat(prices.bound()).isLessThanOrEqualTo(least);
            for (int[] numbers : solutions) {
                for (int number = 0; number < NUMBERS; number++) {
                    int away = prices.isDear(number) ? numbers[number] : MOST - numbers[number];
                    assertThat((long) away).isLessThanOrEqualTo(prices.slack(number, dot(costs, numbers)));
                }
            }
        }
        assertThat(best.bound())
                .isGreaterThanOrEqualTo(relaxation.proven(byChance).bound());
        assertThat(least - best.bound()).isLessThanOrEqualTo(2);
    }
}
