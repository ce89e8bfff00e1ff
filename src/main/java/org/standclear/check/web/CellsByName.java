package org.standclear.check.web;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.CellFileReader;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.AccountStates;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.ProblemException;

/**
 * Finds the cell that a call names, in every lab in which the caller may check programs; where that leaves more than one,
 * the call has to name the lab too.
 */
@Component
class CellsByName {

    private final Cells cells;
    private final Labs labs;
    private final AccountStates accounts;

    CellsByName(Cells cells, Labs labs, AccountStates accounts) {
        this.cells = cells;
        this.labs = labs;
        this.accounts = accounts;
    }

    /** A cell of that name, and whose it is. */
    private record Found(Lab lab, Cell cell) {}

    /**
     * The cell's version in force.
     *
     * @param lab its lab's name or id; null or blank to look in all of the caller's
     */
    CellDescription find(SignedInPerson me, String name, @Nullable String lab) {
        String named = lab == null ? "" : lab.strip();
        List<Found> found = new ArrayList<>();
        for (Lab one : wanted(me, named)) {
            LabScope.in(one.id(), cells::all).stream()
                    .filter(cell -> cell.name().equalsIgnoreCase(name))
                    .forEach(cell -> found.add(new Found(one, cell)));
        }
        if (found.isEmpty()) {
            throw new ProblemException(
                    HttpStatus.NOT_FOUND,
                    named.isEmpty() ? "There is no cell of that name." : "There is no cell of that name in that lab.",
                    Map.of("part", "cell"));
        }
        if (found.size() > 1) {
            throw severalLabs(found);
        }
        Found one = found.get(0);
        String file =
                LabScope.in(one.lab().id(), () -> cells.current(one.cell().id()).file());
        return CellFileReader.read(file).value();
    }

    private List<Lab> wanted(SignedInPerson me, String named) {
        List<Lab> own = own(me);
        if (named.isEmpty()) {
            return own;
        }
        List<Lab> chosen = own.stream()
                .filter(one -> one.name().equalsIgnoreCase(named)
                        || one.id().toString().equals(named))
                .toList();
        if (chosen.isEmpty()) {
            throw new ProblemException(
                    HttpStatus.NOT_FOUND, "You have no part in a lab of that name.", Map.of("part", "lab"));
        }
        return chosen;
    }

    /** The labs in use where the caller is somebody who may check; the only lab, where there is one. */
    private List<Lab> own(SignedInPerson me) {
        if (!labs.areSeveral()) {
            return List.of(labs.theLab());
        }
        return accounts.of(me.id())
                .map(account -> labs.open().stream()
                        .filter(lab -> mayCheck(account.in(lab.id())))
                        .toList())
                .orElse(List.of());
    }

    private static boolean mayCheck(Set<Role> roles) {
        return !Collections.disjoint(roles, CheckRoutes.WHO_CHECKS);
    }

    private static ProblemException severalLabs(List<Found> found) {
        List<Map<String, String>> choices = new ArrayList<>();
        for (Found one : found) {
            Map<String, String> choice = new LinkedHashMap<>();
            choice.put("id", one.lab().id().toString());
            choice.put("name", one.lab().name());
            choices.add(choice);
        }
        String names = found.stream().map(one -> one.lab().name()).collect(Collectors.joining(", "));
        return new ProblemException(
                HttpStatus.CONFLICT,
                "More than one of your labs has a cell of that name: " + names
                        + ". Send the name or the id of one of them in \"lab\".",
                Map.of("part", "lab", "labs", choices));
    }
}
