package org.standclear.core.arm;

/** Which of the ways to reach a place is meant, where an arm has several. */
public sealed interface Branch permits Elbow, Posture {

    /** As files write it. */
    String word();

    /** As a sentence names it: "the elbow on the left". */
    String words();
}
