package org.standclear.simulation;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Follows every booking through the record: nothing jumps a state, and it ends where the booking stands. */
final class LifePaths {

    private static final Set<String> ALWAYS = Set.of(
            "booked>checked",
            "checked>booked",
            "checked>ready",
            "ready>released",
            "ready>booked",
            "ready>checked",
            "released>running",
            "released>ready",
            "released>checked",
            "released>booked",
            "running>stopped",
            "stopped>ready",
            "stopped>checked",
            "running>finished",
            "stopped>finished",
            "finished>closed out");

    /** Ends of a slot that was never used. */
    private static final Set<String> GIVEN_UP = Set.of("cancelled", "late cancelled", "missed", "moved by staff");

    private static final Set<String> WAITING = Set.of("booked", "checked", "ready");

    private final Connection connection;
    private final Map<String, String> states = new HashMap<>();
    private final Set<String> haveRun = new HashSet<>();

    LifePaths(Connection connection) {
        this.connection = connection;
    }

    List<String> faults(List<ChainReader.Entry> fresh) throws SQLException {
        List<String> faults = new ArrayList<>();
        Map<String, String> touched = new LinkedHashMap<>();
        for (ChainReader.Entry entry : fresh) {
            String state = state(entry);
            if (!state.isEmpty()) {
                step(entry.subject(), state, faults);
                touched.put(entry.subject(), entry.lab());
            }
        }
        for (Map.Entry<String, String> one : touched.entrySet()) {
            String booking = one.getKey();
            Map<String, Object> row = Rows.of(
                            connection,
                            "select state, lab_id from bookings where id = ?",
                            java.util.UUID.fromString(booking))
                    .get(0);
            if (!Rows.text(row, "lab_id").equals(one.getValue())) {
                faults.add("another lab's record tells of booking " + booking);
            }
            String stored = Rows.text(row, "state").toLowerCase(Locale.ROOT).replace('_', ' ');
            if (!stored.equals(states.get(booking))) {
                faults.add("booking " + booking + " is " + stored + ", the record left it " + states.get(booking));
            }
        }
        return faults;
    }

    private void step(String booking, String state, List<String> faults) {
        String before = states.put(booking, state);
        if (state.equals("running")) {
            haveRun.add(booking);
        }
        if (before == null ? !state.equals("booked") : !before.equals(state) && !fits(booking, before, state)) {
            faults.add("booking " + booking + " went from " + before + " to " + state);
        }
    }

    private boolean fits(String booking, String before, String state) {
        if (GIVEN_UP.contains(state)) {
            return WAITING.contains(before) && !haveRun.contains(booking);
        }
        boolean endsARun = state.equals("finished") && WAITING.contains(before) && haveRun.contains(booking);
        return endsARun || ALWAYS.contains(before + ">" + state);
    }

    private static String state(ChainReader.Entry entry) {
        String key = "\"state\":\"";
        int at = entry.facts().indexOf(key);
        return !entry.kind().startsWith("booking.") || at < 0
                ? ""
                : entry.facts().substring(at + key.length(), entry.facts().indexOf('"', at + key.length()));
    }
}
