package org.standclear.trail;

/** What a recomputation of the chain found. */
public sealed interface TrailVerification {

    /** Every entry fits the one before it, and the last one is the one the lab's head names. */
    record Whole(long entries, String lastHash) implements TrailVerification {}

    /** The first entry that does not fit, counted from 1, and what is wrong with it. */
    record Broken(long firstBrokenEntry, String says) implements TrailVerification {}
}
