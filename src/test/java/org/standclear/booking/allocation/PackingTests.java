package org.standclear.booking.allocation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers of spans that do not overlap, against all subsets of the spans. */
class PackingTests {

    private final List<long[]> from = new ArrayList<>();
    private final List<long[]> until = new ArrayList<>();

    /** Four cells with three slots each that begin at odd minutes, as those of a half day do. */
    private void make(Random chance) {
        for (int cell = 0; cell < 4; cell++) {
            long offset = chance.nextInt(30);
            from.add(new long[] {offset, offset + 30, offset + 60});
            until.add(new long[] {offset + 30, offset + 60, offset + 90});
        }
    }

    /** The numbers of all subsets without an overlap. */
    private Set<List<Integer>> possible() {
        Set<List<Integer>> possible = new HashSet<>();
        for (int subset = 0; subset < 1 << 12; subset++) {
            int[] numbers = new int[4];
            List<Long> starts = new ArrayList<>();
            for (int span = 0; span < 12; span++) {
                if ((subset >> span & 1) == 1) {
                    numbers[span / 3]++;
                    starts.add(from.get(span / 3)[span % 3]);
                }
            }
            starts.sort(null);
            boolean apart = true;
            for (int span = 1; span < starts.size(); span++) {
                apart = apart && starts.get(span) - starts.get(span - 1) >= 30;
            }
            if (apart) {
                possible.add(Arrays.stream(numbers).boxed().toList());
            }
        }
        return possible;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void sumsTellWhatCanBeFromMostOfWhatCannot(long seed) {
        make(new Random(seed));
        Packing packing = new Packing(from, until);
        Set<List<Integer>> possible = possible();

        List<Packing.Sum> sums = packing.sums();

        int wrong = 0;
        for (int code = 0; code < 256; code++) {
            int[] numbers = {code & 3, code >> 2 & 3, code >> 4 & 3, code >> 6 & 3};
            boolean forbidden = sums.stream().anyMatch(sum -> sum.of(numbers) > sum.most());
            if (possible.contains(Arrays.stream(numbers).boxed().toList())) {
                assertThat(forbidden).as(Arrays.toString(numbers)).isFalse();
            } else {
                wrong += forbidden ? 0 : 1;
            }
        }
        assertThat(packing.tried()).isEqualTo(256);
        assertThat(wrong).as("impossible numbers that no sum forbids").isLessThanOrEqualTo(5);
    }
}
