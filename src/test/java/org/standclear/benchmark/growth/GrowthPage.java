package org.standclear.benchmark.growth;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A page that is opened at every size.
 *
 * @param login who opens it
 * @param path its address at a lab of that size
 */
record GrowthPage(String name, String login, Path path) {

    /** Where the page is; the same at each size, but for ids. */
    @FunctionalInterface
    interface Path {

        String of(GrownLab lab);
    }

    /** Those that the design names, then whatever else people open often; their addresses are asked for once each. */
    static List<GrowthPage> all(LocalDate today) {
        return List.of(
                at("Today", "noor", "/today"),
                at("Book", "noor", "/book"),
                at("Book, in five days", "noor", "/book?day=" + today.plusDays(5)),
                at("run log, staff", "adaeze", "/runs"),
                at("run log, a student's", "noor", "/runs"),
                found("run log, second page", "adaeze", "/runs", "/runs?after="),
                at("run log, a day in the term", "adaeze", "/runs?day=" + today.minusDays(40)),
                found("a run of the term", "adaeze", "/runs?day=" + today.minusDays(40), "/runs/"),
                at("credited minutes", "adaeze", "/runs/credits"),
                at("technician's desk", "adaeze", "/desk"),
                at("My page, student", "noor", "/me"),
                at("My page, technician", "adaeze", "/me"),
                at("own record, student", "noor", "/me/record"),
                at("own record, technician", "adaeze", "/me/record"),
                at("exceptions", "ines", "/exceptions"),
                at("fairness", "ines", "/fairness"),
                // both the weeks and those before them lie within the term that every size has
                at("term report, four weeks", "ines", "/report?first=" + today.minusDays(27) + "&last=" + today),
                at("term report, as it opens", "ines", "/report"),
                found("attendance of a course", "ines", "/courses", "/courses/", "/attendance/", ""),
                found("attendance as a file", "ines", "/courses", "/courses/", "/attendance/", "/turns.csv"),
                found("grading evidence as a file", "ines", "/courses", "/courses/", "/attendance/", "/evidence.csv"),
                calendar("calendar of a student", "noor", ""),
                calendar("calendar of the lab", "adaeze", "lab"),
                found("forecast of a due date", "ines", "/forecast", "/forecast/"),
                at("what is due to be disposed of", "marit", "/retention/due"),
                at("lost bookings", "ines", "/book/lost"),
                at("waiting list", "ines", "/book/waits"),
                at("the record", "marit", "/record"),
                at("people", "marit", "/people"),
                at("cells", "adaeze", "/cells"),
                found("a cell", "adaeze", "/cells", "/cells/"),
                found("bench screen", "adaeze", "/bench", "/bench/"),
                at("incidents", "rosalind", "/incidents"),
                at("incidents as a file", "rosalind", "/incidents.csv"),
                at("reviewer's desk", "rosalind", "/reviewer"));
    }

    private static GrowthPage at(String name, String login, String path) {
        return new GrowthPage(name, login, lab -> path);
    }

    private static GrowthPage found(String name, String login, String on, String prefix) {
        return found(name, login, on, prefix, prefix, "");
    }

    /** An address that is looked for once on another page, its beginning exchanged and something behind it. */
    private static GrowthPage found(
            String name, String login, String on, String prefix, String instead, String behind) {
        Map<GrownLab, String> known = new HashMap<>();
        return new GrowthPage(
                name,
                login,
                lab -> known.computeIfAbsent(
                        lab, key -> lab.linkOn(login, on, prefix).replace(prefix, instead) + behind));
    }

    private static GrowthPage calendar(String name, String login, String of) {
        Map<GrownLab, String> known = new HashMap<>();
        return new GrowthPage(name, login, lab -> known.computeIfAbsent(lab, key -> lab.newCalendar(login, of)));
    }
}
