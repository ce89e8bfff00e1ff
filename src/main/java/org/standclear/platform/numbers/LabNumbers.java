package org.standclear.platform.numbers;

import java.time.Instant;
import java.util.List;
import org.standclear.platform.ids.PersonId;

/** Keeps the numbers of one room, with who changed them and why. */
public interface LabNumbers<T> {

    /** The numbers in force in the lab that the pages serve. */
    T inForce();

    /** The latest changes, latest first; empty while the program's own numbers hold. */
    List<Change<T>> changes(int atMost);

    /** Whoever changes them too waits until the running transaction ends. */
    void lock();

    /** Puts other numbers in force; the caller has checked that the person may. */
    void change(T settings, PersonId by, String reason);

    /** Numbers that were put in force, by whom, when and why. */
    record Change<T>(T settings, PersonId by, Instant at, String reason) {}
}
