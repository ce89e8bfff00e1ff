package org.standclear.incident.web;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.incident.CauseBranch;
import org.standclear.incident.ControlLevel;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentState;
import org.standclear.incident.RecordableOutcome;
import org.standclear.incident.ReporterPart;
import org.standclear.incident.Severity;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.lab.CellNames;
import org.standclear.platform.security.Role;

/** What can be chosen on the forms of incidents, from value to words, in order. */
@Component
class IncidentChoices {

    private final CellNames cellNames;
    private final People people;

    IncidentChoices(CellNames cellNames, People people) {
        this.cellNames = cellNames;
        this.people = people;
    }

    Map<String, String> cells() {
        Map<String, String> cells = new LinkedHashMap<>();
        cellNames.all().forEach((id, name) -> cells.put(id.toString(), name));
        return cells;
    }

    /** The cell of that id, if there is one. */
    Optional<CellId> cell(@Nullable String id) {
        return cellNames.all().keySet().stream()
                .filter(cell -> cell.toString().equals(id))
                .findFirst();
    }

    static Map<String, String> classes() {
        return of(IncidentClass.values(), IncidentClass::code, one -> capital(one.label()));
    }

    static Map<String, String> severities() {
        return of(Severity.values(), Severity::code, Severity::words);
    }

    static Map<String, String> outcomes() {
        return of(RecordableOutcome.values(), RecordableOutcome::code, RecordableOutcome::words);
    }

    /** A form field by field in its own words. */
    static Map<String, String> words(IncidentClass kind, Incident.Form form) {
        Map<String, String> words = new LinkedHashMap<>();
        words.put("What was it?", capital(kind.label()));
        words.put("What happened", form.story());
        words.put("Done at once", form.doneAtOnce());
        words.put("How bad was it?", form.actual().words());
        words.put("How bad could it reasonably have been?", form.foreseeable().words());
        return words;
    }

    static Map<String, String> branches() {
        return of(CauseBranch.values(), CauseBranch::code, CauseBranch::words);
    }

    static Map<String, String> levels() {
        return of(ControlLevel.values(), ControlLevel::code, ControlLevel::words);
    }

    static Map<String, String> states() {
        return of(IncidentState.values(), IncidentState::code, IncidentState::words);
    }

    static Map<String, String> parts() {
        Map<String, String> parts = of(ReporterPart.values(), ReporterPart::code, ReporterPart::words);
        parts.remove(ReporterPart.UNKNOWN.code());
        return parts;
    }

    /** People who can own an action: staff and safety reviewers. */
    Map<String, String> owners() {
        Map<String, String> owners = new LinkedHashMap<>();
        for (Role role : new Role[] {Role.TECHNICIAN, Role.INSTRUCTOR, Role.REVIEWER}) {
            for (Person person : people.with(role)) {
                owners.putIfAbsent(person.id().toString(), person.printedName() + ", " + role.words());
            }
        }
        return owners;
    }

    /** The same with an empty first line. */
    static Map<String, String> withAny(String words, Map<String, String> choices) {
        Map<String, String> more = new LinkedHashMap<>();
        more.put("", words);
        more.putAll(choices);
        return more;
    }

    private static <T> Map<String, String> of(T[] values, Function<T, String> code, Function<T, String> words) {
        Map<String, String> choices = new LinkedHashMap<>();
        Arrays.stream(values).forEach(value -> choices.put(code.apply(value), words.apply(value)));
        return choices;
    }

    static String capital(String words) {
        return words.isEmpty() ? words : Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
