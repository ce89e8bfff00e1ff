package org.standclear.benchmark.growth;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.standclear.benchmark.growth.Past.Grounds;
import org.standclear.benchmark.growth.PastTurn.Bench;
import org.standclear.benchmark.growth.PastTurn.Work;

class PastTests {

    private static final Instant UNTIL = Instant.parse("2026-11-20T09:00:00Z");

    private static Past past(int size) {
        UUID any = new UUID(1, 1);
        List<Bench> benches = IntStream.of(0, 7, 15, 22)
                .mapToObj(offset -> new Bench(new UUID(2, offset), 1, offset))
                .toList();
        List<UUID> students =
                IntStream.range(0, 76).mapToObj(n -> new UUID(3, n)).toList();
        return new Past(new Grounds(any, benches, students, any, new Work(any, any, any, any)), UNTIL, size);
    }

    @Test
    void putsNobodyAndNothingInTwoPlaces() {
        Past past = past(6_000);
        Map<UUID, List<PastTurn>> taken = new HashMap<>();
        for (int number = 1; number <= past.size(); number++) {
            PastTurn turn = past.turn(number);
            for (UUID one : List.of(turn.bench().cell(), turn.operator(), turn.attendant())) {
                taken.computeIfAbsent(one, key -> new ArrayList<>()).add(turn);
            }
        }
        taken.values().forEach(turns -> {
            turns.sort(Comparator.comparing(PastTurn::start));
            for (int i = 1; i < turns.size(); i++) {
                assertThat(turns.get(i).start())
                        .isAfterOrEqualTo(turns.get(i - 1).end());
            }
        });
    }

    @Test
    void hasTheSameTermWhateverTheSize() {
        Past small = past(1_000);
        Past large = past(100_000);

        for (int back = 0; back < Past.TERM; back++) {
            PastTurn one = small.turn(1_000 - back);
            PastTurn other = large.turn(100_000 - back);
            assertThat(other.start()).isEqualTo(one.start());
            assertThat(other.operator()).isEqualTo(one.operator());
            assertThat(other.bench()).isEqualTo(one.bench());
        }
        assertThat(small.formerStudents()).isZero();
    }

    @Test
    void endsBeforeTheInstantAndReachesBackADozenYears() {
        assertThat(past(1_000).turn(1_000).end()).isBefore(UNTIL);
        assertThat(Duration.between(past(1_000_000).turn(1).start(), UNTIL).toDays())
                .isBetween(4_000L, 6_000L);
    }
}
