package org.standclear.people.roster;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.standclear.people.accounts.AccountForms;
import org.standclear.platform.text.PlainText;

/** Looks at a roster line by line; keeps one clear sentence for each thing that is wrong, and counts what is too many. */
final class RosterProblems {

    private static final int SHOWN = 12;

    private final List<String> says = new ArrayList<>();
    private final Map<String, RosterRow> byLogin = new HashMap<>();
    private final Map<String, Integer> byPlace = new HashMap<>();
    private int more;

    void add(String sentence) {
        if (says.size() < SHOWN) {
            says.add(sentence);
        } else {
            more++;
        }
    }

    List<String> says() {
        List<String> all = new ArrayList<>(says);
        if (more > 0) {
            all.add("and " + more + " more.");
        }
        return List.copyOf(all);
    }

    /** Whether the row can be used; otherwise what is wrong with it is noted. */
    boolean allow(RosterRow row) {
        Optional<String> wrong = wrong(row).or(() -> repeated(row));
        wrong.ifPresent(this::add);
        return wrong.isEmpty();
    }

    private static Optional<String> wrong(RosterRow row) {
        String line = "Line " + row.line() + ": ";
        if (!AccountForms.isLogin(row.login())) {
            return Optional.of(line + "\"" + row.login()
                    + "\" is no sign-in name: 2 to 60 letters a to z, digits, full stop, hyphen, underscore, @.");
        }
        if (startsLikeFormula(row.name()) || startsLikeFormula(row.team())) {
            return Optional.of(
                    line + "a cell begins like a formula (" + row.name().charAt(0) + "...); write it as text.");
        }
        if (PlainText.check(row.name(), 80) instanceof PlainText.Refused refused) {
            return Optional.of(line + "the name: " + refused.says());
        }
        if (PlainText.check(row.course(), 20) instanceof PlainText.Refused refused) {
            return Optional.of(line + "the course: " + refused.says());
        }
        if (PlainText.check(row.section(), 20) instanceof PlainText.Refused refused) {
            return Optional.of(line + "the section: " + refused.says());
        }
        if (row.team().length() > 40 || row.address().length() > 254) {
            return Optional.of(line + "a cell is too long.");
        }
        return Optional.empty();
    }

    private static boolean startsLikeFormula(String cell) {
        return !cell.isEmpty() && "=+-@\t\r".indexOf(cell.charAt(0)) >= 0;
    }

    private Optional<String> repeated(RosterRow row) {
        RosterRow known = byLogin.putIfAbsent(row.login(), row);
        if (known != null && !known.name().equals(row.name())) {
            return Optional.of("Lines " + known.line() + " and " + row.line() + ": the sign-in name " + row.login()
                    + " stands for two names, " + known.name() + " and " + row.name() + ".");
        }
        Integer twice = byPlace.putIfAbsent(row.login() + "\n" + row.sectionCode(), row.line());
        return twice == null
                ? Optional.empty()
                : Optional.of("Lines " + twice + " and " + row.line() + " are the same person in the same section.");
    }
}
