package org.standclear.platform.live;

import java.io.IOException;
import java.time.Duration;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.SmartLifecycle;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.AccountStates;
import org.standclear.platform.security.AccountStates.AccountState;

/**
 * The open event streams of this instance: so many for each person, so many in all, a sign of life now and then, and an
 * end after some minutes, so that whoever listens on has to be signed in still.
 */
@Component
public class LiveStreams implements SmartLifecycle {

    static final int FOR_EACH = 8;
    static final int IN_ALL = 400;

    private static final Duration LONGEST = Duration.ofMinutes(5);
    private static final int SENDERS = 4;

    private final LiveHub hub;
    private final AccountStates accounts;
    private final CellLabs cellLabs;
    private final Duration beat;
    private final AtomicLong opened = new AtomicLong();
    private final Set<Stream> streams = ConcurrentHashMap.newKeySet();
    private @Nullable ExecutorService senders;
    private @Nullable ScheduledExecutorService beats;

    LiveStreams(
            LiveHub hub,
            AccountStates accounts,
            CellLabs cellLabs,
            @Value("${standclear.live.beat:15s}") Duration beat) {
        this.hub = hub;
        this.accounts = accounts;
        this.cellLabs = cellLabs;
        this.beat = beat;
    }

    /**
     * A stream for the person; empty when there are enough in all. Of a person's own the oldest gives way: whoever goes from
     * page to page leaves streams behind that are found dead only at the next sign of life.
     */
    public synchronized Optional<SseEmitter> open(PersonId person) {
        List<Stream> own = streams.stream()
                .filter(one -> one.person.equals(person))
                .sorted(Comparator.comparingLong(one -> one.number))
                .toList();
        own.stream().limit(Math.max(0, own.size() - FOR_EACH + 1)).forEach(this::end);
        Optional<AccountState> account = accounts.of(person);
        if (streams.size() >= IN_ALL || senders == null || account.isEmpty()) {
            return Optional.empty();
        }
        Stream stream = new Stream(person, account.get());
        streams.add(stream);
        hub.add(stream);
        stream.emitter.onCompletion(() -> forget(stream));
        stream.emitter.onTimeout(stream.emitter::complete);
        stream.emitter.onError(broken -> forget(stream));
        stream.accept("");
        return Optional.of(stream.emitter);
    }

    int count() {
        return streams.size();
    }

    private void end(Stream stream) {
        forget(stream);
        stream.emitter.complete();
    }

    private void forget(Stream stream) {
        hub.remove(stream);
        streams.remove(stream);
    }

    private void beat() {
        for (Stream stream : streams) {
            Optional<AccountState> account = accounts.of(stream.person);
            if (account.isEmpty()) {
                end(stream);
            } else {
                stream.account = account.get();
                stream.accept("");
            }
        }
    }

    @Override
    public synchronized void start() {
        senders = Executors.newFixedThreadPool(SENDERS, LiveStreams::thread);
        ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(LiveStreams::thread);
        var unused = clock.scheduleWithFixedDelay(this::beat, beat.toMillis(), beat.toMillis(), TimeUnit.MILLISECONDS);
        beats = clock;
    }

    private static Thread thread(Runnable work) {
        Thread thread = new Thread(work, "live-stream");
        thread.setDaemon(true);
        return thread;
    }

    @Override
    public synchronized void stop() {
        streams.forEach(stream -> stream.emitter.complete());
        streams.clear();
        if (senders != null) {
            senders.shutdownNow();
            senders = null;
        }
        if (beats != null) {
            beats.shutdownNow();
            beats = null;
        }
    }

    @Override
    public boolean isRunning() {
        return senders != null;
    }

    /** One listener. What it has not been sent yet is kept once each, so that a slow one gathers no queue. */
    private final class Stream implements Consumer<String> {

        private final PersonId person;
        private volatile AccountState account;
        private final long number = opened.incrementAndGet();
        private final SseEmitter emitter = new SseEmitter(LONGEST.toMillis());
        private final Set<String> waiting = new LinkedHashSet<>();
        private boolean sending;

        Stream(PersonId person, AccountState account) {
            this.person = person;
            this.account = account;
        }

        /** A cell that changed; nothing but a sign of life when empty. */
        @Override
        public void accept(String cell) {
            if (!cellLabs.concerns(cell, account)) {
                return;
            }
            ExecutorService pool = senders;
            synchronized (waiting) {
                waiting.add(cell);
                if (sending || pool == null) {
                    return;
                }
                sending = true;
            }
            try {
                pool.execute(this::send);
            } catch (RejectedExecutionException stopping) {
                forget(this);
            }
        }

        private void send() {
            try {
                for (String cell = next(); cell != null; cell = next()) {
                    emitter.send(
                            cell.isEmpty()
                                    ? SseEmitter.event().comment("here").reconnectTime(2_000)
                                    : SseEmitter.event().name("cell").data(cell));
                }
            } catch (IOException | IllegalStateException gone) {
                forget(this);
                emitter.completeWithError(gone);
            }
        }

        private @Nullable String next() {
            synchronized (waiting) {
                if (waiting.isEmpty()) {
                    sending = false;
                    return null;
                }
                String first = waiting.iterator().next();
                waiting.remove(first);
                return first;
            }
        }
    }
}
