package org.standclear.people.roster;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.standclear.people.accounts.AccountForms;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.text.TableCell;

/** Looks at a roster line by line; keeps one clear sentence for each thing that is wrong, and counts what is too many. */
final class RosterProblems {

    private static final int SHOWN = 12;
    private static final int LONGEST_SHOWN = 80;
    private static final int LONGEST = 300;

    private final List<String> says = new ArrayList<>();
    private final Map<String, RosterRow> byLogin = new HashMap<>();
    private final Map<String, Integer> byPlace = new HashMap<>();
    private int more;

    void add(String sentence) {
        if (says.size() < SHOWN) {
            // cells of the file stand in it, and a cell may be a megabyte
            says.add(PlainText.mended(sentence, LONGEST));
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
            return Optional.of(line + "\"" + PlainText.mended(row.login(), LONGEST_SHOWN)
                    + "\" is no sign-in name: 2 to 60 letters a to z, digits, full stop, hyphen, underscore, @.");
        }
        return Stream.of(row.name(), row.course(), row.section(), row.team())
                .filter(TableCell::beginsLikeFormula)
                .findFirst()
                .map(cell -> line + "a cell begins like a formula (" + cell.charAt(0) + "...); write it as text.")
                .or(() -> cell(line + "the name: ", row.name(), 80))
                .or(() -> cell(line + "the course: ", row.course(), 20))
                .or(() -> cell(line + "the section: ", row.section(), 20))
                .or(() -> row.team().isEmpty() ? Optional.empty() : cell(line + "the team: ", row.team(), 40))
                .or(() -> row.address().length() > 254
                        ? Optional.of(line + "the e-mail address: Use 254 characters at most; this has "
                                + row.address().length() + ".")
                        : Optional.empty());
    }

    private static Optional<String> cell(String where, String text, int max) {
        return PlainText.check(text, max) instanceof PlainText.Refused refused
                ? Optional.of(where + refused.says())
                : Optional.empty();
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
