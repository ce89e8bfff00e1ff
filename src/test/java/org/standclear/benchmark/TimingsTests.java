package org.standclear.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

class TimingsTests {

    @Test
    void takesQuantilesByNearestRank() {
        // the example of the nearest-rank definition: of 15 20 35 40 50, the 30th percentile is 20, the 40th 20, the
        // 50th 35
        Timings timings = new Timings(
                LongStream.of(50, 15, 40, 20, 35).map(ms -> ms * 1_000_000).toArray(), 0, Duration.ofSeconds(2));

        assertThat(timings.quantileMs(0.30)).isEqualTo(20);
        assertThat(timings.quantileMs(0.40)).isEqualTo(20);
        assertThat(timings.quantileMs(0.50)).isEqualTo(35);
        assertThat(timings.quantileMs(1.00)).isEqualTo(50);
        assertThat(timings.perSecond()).isEqualTo(2.5);
    }
}
