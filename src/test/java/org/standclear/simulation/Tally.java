package org.standclear.simulation;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

/** How often each kind of act came to its end over some terms, as their journals tell. */
final class Tally {

    /** What people do, and the words of the journal's lines in which it was done. */
    private static final Map<String, List<String>> ACTS = new LinkedHashMap<>();

    static {
        ACTS.put("starts", List.of("released: kept"));
        ACTS.put("stops", List.of("_STOP on ", "_PRESS on "));
        ACTS.put("unread lines waived", List.of("unread lines Kept"));
        ACTS.put("unread lines not waived", List.of("unread lines Refused"));
        ACTS.put("close-outs", List.of("ODD kept"));
        ACTS.put("handovers begun", List.of("hands over Opened"));
        ACTS.put("incidents", List.of(" on Avocet Kept", " on Bittern Kept", " on Curlew Kept"));
        ACTS.put("forms", List.of("form Done"));
        ACTS.put("statements", List.of("states Done"));
        ACTS.put("classes set anew", List.of("class Done"));
        ACTS.put("reviews begun", List.of("take Done"));
        ACTS.put("causes", List.of("cause Done"));
        ACTS.put("restarts approved", List.of("restart Done"));
        ACTS.put("risk reviews", List.of("risk review Done"));
        ACTS.put("actions agreed", List.of("action Done"));
        ACTS.put("actions done", List.of("done Done"));
        ACTS.put("incidents closed", List.of("close Done"));
        ACTS.put("closings refused", List.of("close too soon Refused", "close Refused"));
        ACTS.put("effects looked at", List.of("helped Done"));
        ACTS.put("inspections", List.of("INSPECTION Recorded"));
        ACTS.put("risk assessments", List.of("RISK_ASSESSMENT Recorded"));
        ACTS.put("tool changes begun", List.of("begun Going"));
        ACTS.put("tools changed", List.of("read Done"));
        ACTS.put("readings refused", List.of("read Refused"));
        ACTS.put("tool changes given up", List.of("given up Going"));
        ACTS.put("paper cards", List.of("paper card Kept"));
        ACTS.put("paper cards refused", List.of("paper card Refused"));
        ACTS.put("waits", List.of(" On"));
        ACTS.put("offers taken", List.of("taken Booked"));
        ACTS.put("offers refused", List.of("taken refused"));
        ACTS.put("offers declined", List.of("declined true"));
        ACTS.put("cells kept for staff", List.of("kept for staff Closed"));
        ACTS.put("cells given back", List.of("reopened true"));
        ACTS.put("moves of everybody", List.of("all moved All"));
        ACTS.put("moves refused since the plan was old", List.of("all moved Refused"));
        ACTS.put("moves of everybody undone", List.of("all moved back Done"));
        ACTS.put("single moves", List.of("moved Booked"));
        ACTS.put("turns excused", List.of("excused true"));
        ACTS.put("turns counted again", List.of("counted again true"));
        ACTS.put("make-ups given", List.of("make-up given true"));
        ACTS.put("make-ups withdrawn", List.of("make-up withdrawn true"));
    }

    private final Map<String, Long> counts = new LinkedHashMap<>();
    private long acts;
    private long deaths;
    private Duration took = Duration.ZERO;

    Tally() {
        ACTS.keySet().forEach(act -> counts.put(act, 0L));
    }

    void add(Journal journal) {
        acts += journal.lines().size();
        deaths += journal.deaths();
        took = took.plus(journal.took());
        ACTS.forEach((act, words) ->
                counts.merge(act, words.stream().mapToLong(journal::count).sum(), Long::sum));
    }

    /** Every kind of act, with how often it was done. */
    Map<String, Long> counts() {
        return counts;
    }

    long of(String act) {
        return Objects.requireNonNull(counts.get(act), act);
    }

    long deaths() {
        return deaths;
    }

    @Override
    public String toString() {
        return acts + " acts, "
                + counts.entrySet().stream()
                        .map(one -> one.getValue() + " " + one.getKey())
                        .collect(Collectors.joining(", "))
                + ", " + deaths + " deaths of the process, " + took.toSeconds() + " s of processor time";
    }
}
