package org.standclear.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpSession;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.stereotype.Component;
import org.springframework.web.util.UriUtils;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.LabOwners;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.AccountStates.AccountState;
import org.standclear.platform.web.Problems;

/**
 * Finds out which lab a request is for. What the address and the form name decides, when it is a lab of the person's; then
 * what the person chose; then the first lab that the person works in. Something of a lab that is not the person's is not
 * found, like an id that nobody has, and so are things of two labs together; but for a stop, which is for the cell's lab.
 * A call by a program chooses nothing: it is for the first lab in which its person may make it.
 */
@Component
public class LabOfRequest {

    /** Where a session keeps the id of the lab that its person chose. */
    public static final String CHOSEN = "standclear.lab";

    /** Where a request keeps its {@link Decision}, for the pages' header. */
    public static final String DECISION = "labDecision";

    /**
     * The lab that a form was shown for. A form without any id acts on it, also when its person has changed labs in another
     * window since; a form that names a thing follows the thing.
     */
    private static final String FORM_LAB = "formLab";

    private static final Pattern ID =
            Pattern.compile("[0-9a-fA-F]{8}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{12}");

    /** Parameters with ids of no thing. */
    private static final Set<String> NO_THINGS = Set.of("formToken", "_csrf", FORM_LAB);

    /** More than any form sends; a request with more is taken for one that names what is not the person's to see. */
    private static final int MOST_IDS = 2000;

    private final Labs labs;
    private final LabOwners owners;
    private final Routes routes;

    LabOfRequest(Labs labs, LabOwners owners, Routes routes) {
        this.labs = labs;
        this.owners = owners;
        this.routes = routes;
    }

    /**
     * What was found out.
     *
     * @param lab what the work is for
     * @param elsewhere whether the request names something that is not for the person to see in that lab
     * @param choices the open labs between which the person can choose
     */
    public record Decision(LabId lab, boolean elsewhere, List<Lab> choices) {

        public Decision {
            choices = List.copyOf(choices);
        }

        /** Whether there is anything to choose. */
        public boolean several() {
            return choices.size() > 1;
        }
    }

    Decision decide(HttpServletRequest request, AccountState account) {
        if (!labs.areSeveral()) {
            return new Decision(labs.theLab().id(), false, List.of());
        }
        List<Lab> own = labs.all().stream()
                .filter(lab -> account.isAdministrator() || account.worksIn(lab.id()))
                .toList();
        List<Lab> choices = own.stream().filter(lab -> !lab.closed()).toList();
        Set<LabId> fitting = new LinkedHashSet<>(own.stream().map(Lab::id).toList());
        LabId usual = Problems.wanted(request)
                ? firstOf(own, lab -> !Collections.disjoint(account.in(lab.id()), routes.rolesFor(request)))
                        .orElseGet(() -> usual(own, "", account))
                : usual(own, chosen(request), account);
        Set<UUID> named = named(request);
        if (named.size() > MOST_IDS) {
            return new Decision(usual, true, choices);
        }
        Collection<Set<LabId>> things = owners.of(named).values();
        things.forEach(fitting::retainAll);
        if (fitting.isEmpty()) {
            return atTheCell(request)
                    .map(lab -> new Decision(lab, false, choices))
                    .orElseGet(() -> new Decision(usual, !things.isEmpty(), choices));
        }
        return new Decision(fitting.contains(usual) ? usual : fitting.iterator().next(), false, choices);
    }

    private static Optional<LabId> firstOf(List<Lab> own, Predicate<Lab> fits) {
        return own.stream()
                .filter(lab -> !lab.closed() && fits.test(lab))
                .map(Lab::id)
                .findFirst();
    }

    /** A stop is for the lab of its cell, whoever logs it: who stands there may belong to another lab, or to none. */
    private Optional<LabId> atTheCell(HttpServletRequest request) {
        return AtTheCell.cell(request)
                .flatMap(cell -> owners.of(Set.of(cell)).getOrDefault(cell, Set.of()).stream()
                        .findFirst());
    }

    private LabId usual(List<Lab> own, String chosen, AccountState account) {
        return own.stream()
                .map(Lab::id)
                .filter(lab -> lab.toString().equals(chosen))
                .findFirst()
                .or(() -> firstOf(own, lab -> account.worksIn(lab.id())))
                .or(() -> own.stream().map(Lab::id).findFirst())
                .orElseGet(() -> labs.theLab().id());
    }

    private static String chosen(HttpServletRequest request) {
        String ofForm = request.getParameter(FORM_LAB);
        if (ofForm != null) {
            return ofForm;
        }
        HttpSession session = request.getSession(false);
        return session == null
                ? ""
                : Objects.requireNonNullElse(session.getAttribute(CHOSEN), "").toString();
    }

    /** Every id of the address and of the form, whatever it is called there. */
    private static Set<UUID> named(HttpServletRequest request) {
        Set<UUID> found = new HashSet<>();
        // as the controllers read it
        collect(UriUtils.decode(request.getRequestURI(), StandardCharsets.UTF_8), found);
        for (Map.Entry<String, String[]> parameter : request.getParameterMap().entrySet()) {
            if (!NO_THINGS.contains(parameter.getKey())) {
                collect(parameter.getKey(), found);
                for (String value : parameter.getValue()) {
                    collect(value, found);
                }
            }
        }
        return found;
    }

    private static void collect(String text, Set<UUID> found) {
        Matcher ids = ID.matcher(text);
        while (found.size() <= MOST_IDS && ids.find()) {
            found.add(UUID.fromString(ids.group()));
        }
    }
}
