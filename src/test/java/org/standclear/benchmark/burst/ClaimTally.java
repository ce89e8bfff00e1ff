package org.standclear.benchmark.burst;

import java.net.http.HttpResponse;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;

/** Counts what people were told when they claimed a slot. */
final class ClaimTally {

    private final Map<String, AtomicInteger> winners = new ConcurrentHashMap<>();
    private final Map<Integer, AtomicInteger> refused = new ConcurrentHashMap<>();
    private final AtomicInteger accepted = new AtomicInteger();

    /** Takes an answer to a claim on the slot; says what was wrong with it, or nothing when it is booked or refused. */
    String take(String slot, HttpResponse<String> answer) {
        int status = answer.statusCode();
        if (status == 302 && answer.headers().firstValue("Location").orElse("").contains("/bookings/")) {
            accepted.incrementAndGet();
            winners.computeIfAbsent(slot, key -> new AtomicInteger()).incrementAndGet();
            return "";
        }
        if (status == 409 || status == 422) {
            refused.computeIfAbsent(status, key -> new AtomicInteger()).incrementAndGet();
            return "";
        }
        return "status " + status + answer.headers().firstValue("Location").orElse("");
    }

    int accepted() {
        return accepted.get();
    }

    /** How many were told that the slot is theirs. */
    int winnersOf(String slot) {
        AtomicInteger counted = winners.get(slot);
        return counted == null ? 0 : counted.get();
    }

    /** Refusals by status: 409 somebody was faster, 422 a rule that could have been known. */
    Map<Integer, AtomicInteger> refused() {
        return new TreeMap<>(refused);
    }
}
