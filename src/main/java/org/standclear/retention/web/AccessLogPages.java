package org.standclear.retention.web;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.util.UriComponentsBuilder;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.AccessLog.Look;
import org.standclear.platform.access.Sight;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** Who looked at whose record, for the administrator and the safety reviewer. */
@Controller
class AccessLogPages {

    private static final int PAGE = 50;

    private final AccessLog looks;
    private final People people;
    private final LabTime labTime;

    AccessLogPages(AccessLog looks, People people, LabTime labTime) {
        this.looks = looks;
        this.people = people;
        this.labTime = labTime;
    }

    /** A look in words. */
    record Line(String at, String viewer, String sight, String whose) {}

    @GetMapping("/retention/access")
    String show(
            @RequestParam(defaultValue = "") String viewer,
            @RequestParam(defaultValue = "") String whose,
            @RequestParam(required = false) @Nullable String before,
            Model model) {
        Optional<Person> who = people.byLogin(viewer.strip());
        Optional<Person> of = people.byLogin(whose.strip());
        boolean nobody = (!viewer.isBlank() && who.isEmpty()) || (!whose.isBlank() && of.isEmpty());
        List<Look> found = nobody ? List.of() : looks.latest(id(who), id(of), position(before), PAGE + 1);
        // who has left the lab is found by what the log has of them; whether others have an account is not for it to
        // say
        boolean unknown = nobody || (found.isEmpty() && (isElsewhere(who) || isElsewhere(of)));
        List<Look> shown = found.subList(0, Math.min(PAGE, found.size()));
        model.addAttribute("lines", lines(shown));
        model.addAttribute("viewer", viewer.strip());
        model.addAttribute("whose", whose.strip());
        model.addAttribute("unknown", unknown);
        model.addAttribute(
                "next", found.size() > PAGE ? next(viewer.strip(), whose.strip(), shown.get(PAGE - 1)) : null);
        return "retention/access";
    }

    private static boolean isElsewhere(Optional<Person> person) {
        return person.isPresent() && person.get().roles().isEmpty();
    }

    private static @Nullable PersonId id(Optional<Person> person) {
        return person.map(Person::id).orElse(null);
    }

    private List<Line> lines(List<Look> shown) {
        Map<PersonId, String> names = people.printedNames(shown.stream()
                .flatMap(look -> Stream.of(look.viewer(), look.whose()))
                .filter(Objects::nonNull)
                .toList());
        return shown.stream().map(look -> line(look, names)).toList();
    }

    private Line line(Look look, Map<PersonId, String> names) {
        PersonId whose = look.whose();
        return new Line(
                labTime.full(look.at()),
                names.getOrDefault(look.viewer(), People.UNKNOWN),
                look.sight().words(),
                whose == null ? "names nobody, or many" : names.getOrDefault(whose, People.UNKNOWN));
    }

    private static String next(String viewer, String whose, Look last) {
        return UriComponentsBuilder.fromPath("/retention/access")
                .queryParam("viewer", "{viewer}")
                .queryParam("whose", "{whose}")
                .queryParam("before", "{before}")
                .encode()
                .buildAndExpand(viewer, whose, last.at() + "_" + last.id())
                .toUriString();
    }

    /** The look after which the page starts; the first page when the address says nothing that can be read. */
    private static @Nullable Look position(@Nullable String before) {
        String[] parts = before == null ? new String[0] : before.split("_", 2);
        try {
            return parts.length < 2
                    ? null
                    : new Look(
                            Id.parse(parts[1]),
                            new PersonId(new UUID(0, 0)),
                            null,
                            Sight.ACCOUNT,
                            "",
                            Instant.parse(parts[0]));
        } catch (DateTimeParseException | IllegalArgumentException noPosition) {
            return null;
        }
    }
}
