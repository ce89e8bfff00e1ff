package org.standclear.platform.live;

import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import org.springframework.stereotype.Component;

/** Hands what changed to everybody of this instance who listens. */
@Component
class LiveHub {

    /** Sent instead of a cell when events may have been missed: whoever shows any cell looks again. */
    static final String EVERYTHING = "all";

    private final Set<Consumer<String>> listeners = ConcurrentHashMap.newKeySet();

    void add(Consumer<String> listener) {
        listeners.add(listener);
    }

    void remove(Consumer<String> listener) {
        listeners.remove(listener);
    }

    void publish(String cell) {
        listeners.forEach(listener -> listener.accept(cell));
    }
}
