package org.standclear.benchmark.burst;

import java.net.URI;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.standclear.testing.DemoCollege;
import org.standclear.testing.web.WebPage.WebForm;
import org.standclear.testing.web.WebUser;

/** The free slots of the days that can be booked, as the pages show them to a student. */
final class OpeningSlots {

    private static final int DAYS = 14;

    private final Map<String, List<String>> free = new LinkedHashMap<>();

    OpeningSlots(URI address, LocalDate today) {
        WebUser student = new WebUser(address).signIn("lars.cinderglen", DemoCollege.password());
        for (int day = 2; day <= DAYS; day++) {
            String path = "/book?day=" + today.plusDays(day);
            List<String> links = new ArrayList<>(student.get(path)
                    .document()
                    .select("li a.slot[href^=/book/slot]")
                    .eachAttr("href"));
            if (!links.isEmpty()) {
                free.put(path, links);
            }
        }
    }

    /** The pages of days on which something is free. */
    List<String> days() {
        return List.copyOf(free.keySet());
    }

    /** Takes four slots of the day out, for one rush. */
    List<String> takeFour(String day) {
        List<String> links = free.getOrDefault(day, List.of());
        if (links.size() < 4) {
            throw new IllegalStateException("fewer than four slots are free on " + day);
        }
        List<String> four = List.copyOf(links.subList(0, 4));
        links.subList(0, 4).clear();
        return four;
    }

    /** So many of the others, spread over the days. */
    List<String> others(int atMost) {
        List<String> others = new ArrayList<>();
        for (int round = 0; others.size() < atMost; round++) {
            int before = others.size();
            for (List<String> links : free.values()) {
                if (round < links.size() && others.size() < atMost) {
                    others.add(links.get(round));
                }
            }
            if (others.size() == before) {
                return others;
            }
        }
        return others;
    }

    /** The form filled in with the slot that the link leads to. */
    static WebForm filledIn(WebForm form, String link) {
        WebForm filled = form;
        for (String field : URI.create(link).getQuery().split("&")) {
            String[] nameAndValue = field.split("=", 2);
            filled = filled.with(nameAndValue[0], nameAndValue[1]);
        }
        return filled;
    }
}
