package org.standclear.platform.lab;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.standclear.platform.ids.LabId;

/**
 * A robot lab: where it is, which zone its times are in, and what to do when someone is hurt.
 *
 * @param emergencyNumber the number to call first, as dialled from the lab
 * @param firstAider who and where, in words
 * @param stopMap where the e-stops are, in words
 * @param closed whether it is out of use: its record is read, and nothing is booked in it
 */
public record Lab(
        LabId id,
        String college,
        String room,
        String name,
        ZoneId zone,
        String emergencyNumber,
        String firstAider,
        String stopMap,
        boolean closed) {

    /** A lab in use. */
    public Lab(
            LabId id,
            String college,
            String room,
            String name,
            ZoneId zone,
            String emergencyNumber,
            String firstAider,
            String stopMap) {
        this(id, college, room, name, zone, emergencyNumber, firstAider, stopMap, false);
    }

    /** What the first migration writes where only people of the lab know the answer. */
    private static final String NOT_SET = "not set";

    /** The same lab by another clock. */
    public Lab in(ZoneId other) {
        return new Lab(id, college, room, name, other, emergencyNumber, firstAider, stopMap, closed);
    }

    /** Which of the facts that have to hang at every bench are not known yet, in words. */
    public List<String> unknown() {
        List<String> unknown = new ArrayList<>();
        note(unknown, "emergency number", emergencyNumber);
        note(unknown, "first-aider", firstAider);
        note(unknown, "e-stop map", stopMap);
        return List.copyOf(unknown);
    }

    private static void note(List<String> unknown, String what, String value) {
        if (value.isBlank() || value.equals(NOT_SET)) {
            unknown.add(what);
        }
    }

    /** What follows a time of this lab for who reads it in another: which lab, and whose clock where that differs. */
    public String seenFrom(Lab here) {
        if (id.equals(here.id)) {
            return "";
        }
        return zone.equals(here.zone) ? ", " + name : ", " + name + ", by the clock of " + zoneName();
    }

    /** The zone's name as people read it. */
    public String zoneName() {
        return zone.getId().replace('_', ' ');
    }
}
