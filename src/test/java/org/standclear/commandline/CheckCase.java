package org.standclear.commandline;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/**
 * One worked case: what the command line answers beside what another program expects, which shares no code with this
 * one and was itself held against KDL, published values and brute-force sampling.
 */
final class CheckCase {

    private static final ObjectMapper JSON = new ObjectMapper();

    /** Numbers agree within this part of the expected one, or within the floor of their unit. */
    private static final double TOLERANCE = 0.002;

    private static final double FLOOR_SECONDS = 0.001;
    private static final double FLOOR = 0.05;

    private final JsonNode expected;
    private final JsonNode actual;
    private final int exit;
    private final String error;
    private final List<String> differences = new ArrayList<>();

    private CheckCase(JsonNode expected, int exit, String answer, String error) {
        this.expected = expected;
        this.exit = exit;
        this.actual = JSON.readTree(answer.isEmpty() ? "{}" : answer);
        this.error = error;
    }

    /** Runs a case through the command line. */
    static CheckCase run(Path folder) throws Exception {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int exit = Commands.run(
                new PrintWriter(out),
                new PrintWriter(err),
                "check",
                "--cell",
                folder.resolve("cell.yaml").toString(),
                folder.resolve("program.yaml").toString(),
                "--json");
        JsonNode expected = JSON.readTree(Files.readString(folder.resolve("expected.json")));
        return new CheckCase(expected, exit, out.toString(), err.toString());
    }

    /** Everything in which the answer differs from the expected one. */
    List<String> differences() {
        same("exit", expected.get("exit").asInt(), exit);
        if (expected.get("exit").asInt() == Commands.WRONG_USAGE) {
            same("lines of the message", 1L, error.lines().count());
            same("names the line", true, error.matches("(?s).*, line [1-9][0-9]*: .*"));
            return differences;
        }
        same("answer", expected.get("answer").asString(), actual.path("answer").asString());
        eachOf(
                expected.get("cell"),
                (name, value) -> same(name, value, actual.path("cell").get(name)));
        eachOf(
                expected.get("program"),
                (name, value) -> same(name, value, actual.path("program").get(name)));
        eachOf(
                expected.get("motion"),
                (name, value) -> number(name, value, actual.path("motion").path(name)));
        oneOf(
                "fastest-part",
                expected.path("fastest-part"),
                actual.path("motion").path("fastest-part"));
        oneOf("peak-step", expected.path("peak-step"), actual.path("motion").path("peak-step"));
        list(expected.path("findings")).forEach(this::finding);
        list(expected.path("contact")).forEach(this::contact);
        steps();
        return differences;
    }

    private void finding(JsonNode wanted) {
        String check = wanted.get("check").asString();
        List<JsonNode> found = list(actual.path("findings"))
                .filter(one -> one.get("check").asString().equals(check))
                .toList();
        if (found.isEmpty()) {
            same(check + " is there", wanted.path("optional").asBoolean(false), true);
            return;
        }
        found.forEach(one -> oneOf(check, wanted.get("outcome"), one.get("outcome")));
        for (String name : List.of("observed", "limit")) {
            if (wanted.has(name)) {
                number(check + " " + name, wanted.get(name), found.get(0).path(name));
            }
        }
        if (wanted.has("unit")) {
            same(check + " unit", wanted.get("unit"), found.get(0).get("unit"));
        }
    }

    private void contact(JsonNode wanted) {
        String region = wanted.get("region").asString();
        JsonNode found = list(actual.path("contact"))
                .filter(one -> one.get("region").asString().equals(region))
                .findFirst()
                .orElse(actual.path("missing"));
        number(region, wanted.get("permitted-mm-s"), found.path("permitted-mm-s"));
    }

    private void steps() {
        List<JsonNode> steps = list(actual.path("motion").path("steps")).toList();
        int next = 0;
        for (JsonNode wanted : list(expected.path("steps")).toList()) {
            if (next == steps.size()) {
                same("step " + wanted.get("step") + " is there", true, wanted.has("optional"));
                continue;
            }
            JsonNode step = steps.get(next++);
            String name = "step " + wanted.get("step");
            same(name, wanted.get("step"), step.get("step"));
            same(name + " line", wanted.get("line"), step.get("line"));
            same(name + " closing", wanted.has("closing"), step.has("closing"));
            oneOf(name + " kind", wanted.get("kind"), step.get("kind"));
            eachOf(wanted, (field, value) -> {
                if (field.contains("-s") && value.isNumber()) {
                    number(name + " " + field, value, step.path(field));
                }
            });
        }
        same("number of steps", next, steps.size());
        boolean closes = steps.stream().anyMatch(step -> step.has("closing"));
        if (expected.has("closing-last")) {
            same("closes last", true, steps.get(steps.size() - 1).has("closing"));
        }
        if (expected.has("no-closing")) {
            same("closes", false, closes);
        }
    }

    private static Stream<JsonNode> list(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false);
    }

    private static void eachOf(JsonNode object, java.util.function.BiConsumer<String, JsonNode> taker) {
        object.properties().forEach(entry -> taker.accept(entry.getKey(), entry.getValue()));
    }

    private void same(String what, Object wanted, Object found) {
        if (!wanted.equals(found)) {
            differences.add(what + ": wanted " + wanted + ", found " + found);
        }
    }

    private void oneOf(String what, JsonNode wanted, JsonNode found) {
        if (wanted.isArray() && list(wanted).noneMatch(one -> one.equals(found))) {
            differences.add(what + ": wanted one of " + wanted + ", found " + found);
        }
    }

    private void number(String what, JsonNode wanted, JsonNode found) {
        double floor = what.endsWith("-s") && !what.endsWith("mm-s") ? FLOOR_SECONDS : FLOOR;
        double allowed = Math.max(floor, TOLERANCE * Math.abs(wanted.asDouble()));
        boolean near = found != null && found.isNumber() && Math.abs(found.asDouble() - wanted.asDouble()) <= allowed;
        if (!near) {
            differences.add(what + ": wanted " + wanted + ", found " + found);
        }
    }
}
