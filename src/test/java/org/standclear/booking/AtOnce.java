package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.springframework.dao.DataAccessException;

/** Several acts begun at the same moment. */
final class AtOnce {

    private static final int MANY = 6;

    private AtOnce() {}

    /** What each answered; somebody who lost against a lock has no answer and would try again. */
    static <T> List<T> all(List<Callable<T>> acts) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(acts.size());
        try {
            CountDownLatch ready = new CountDownLatch(acts.size());
            List<Future<T>> answers = new ArrayList<>();
            for (Callable<T> act : acts) {
                answers.add(threads.submit(() -> {
                    ready.countDown();
                    ready.await();
                    return act.call();
                }));
            }
            List<T> given = new ArrayList<>();
            for (Future<T> answer : answers) {
                try {
                    given.add(answer.get());
                } catch (ExecutionException lost) {
                    assertThat(lost.getCause())
                            .isInstanceOfSatisfying(
                                    DataAccessException.class,
                                    why -> assertThat(Contention.is(why)).isTrue());
                }
            }
            return given;
        } finally {
            threads.shutdown();
        }
    }

    /** The same act, many times. */
    static <T> List<T> times(Callable<T> act) throws Exception {
        return all(IntStream.range(0, MANY).mapToObj(number -> act).toList());
    }
}
