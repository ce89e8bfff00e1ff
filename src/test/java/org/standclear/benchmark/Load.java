package org.standclear.benchmark;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/** Many at once, each doing the same act so many times, one after the other and without a pause. */
final class Load {

    private Load() {}

    /** One act of one of the many; says whether it came out as expected. */
    @FunctionalInterface
    interface Act {

        boolean perform(int who, int round) throws Exception;
    }

    static Timings run(int many, int rounds, Act act) throws Exception {
        long[] nanos = new long[many * rounds];
        AtomicInteger errors = new AtomicInteger();
        CountDownLatch gate = new CountDownLatch(1);
        ExecutorService people = Executors.newFixedThreadPool(many);
        List<Future<?>> pending = new ArrayList<>();
        for (int who = 0; who < many; who++) {
            int me = who;
            pending.add(people.submit(() -> {
                gate.await();
                for (int round = 0; round < rounds; round++) {
                    long begin = System.nanoTime();
                    boolean asExpected = act.perform(me, round);
                    nanos[me * rounds + round] = System.nanoTime() - begin;
                    if (!asExpected) {
                        errors.incrementAndGet();
                    }
                }
                return null;
            }));
        }
        long begin = System.nanoTime();
        gate.countDown();
        for (Future<?> one : pending) {
            one.get();
        }
        Duration wall = Duration.ofNanos(System.nanoTime() - begin);
        people.shutdown();
        return new Timings(nanos, errors.get(), wall);
    }
}
