package org.standclear.benchmark;

import java.net.URI;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jsoup.nodes.Element;
import org.standclear.testing.DemoCollege;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebUser;

/**
 * Fifty people with booking forms that are filled in and not sent yet, each for a slot that nobody else wants. Who has longer
 * turns than the lab's is none of them: such a turn reaches into a slot that another of them books.
 */
final class BookingForms {

    private static final int MOST_DAYS = 150;

    /** As the demo's lab has it. */
    private static final Duration USUAL = Duration.ofMinutes(30);

    private static final Pattern SPAN = Pattern.compile("(\\d\\d:\\d\\d)-(\\d\\d:\\d\\d)");

    private final List<WebUser> people = new ArrayList<>();
    private final List<List<WebPage.WebForm>> forms = new ArrayList<>();
    private final Set<String> wanted = new HashSet<>();

    /** Opens the calendar far ahead, then looks for so many slots for each of so many people, one a day for each. */
    BookingForms(URI address, int many, int each) throws Exception {
        openUp(address);
        for (String login : DemoCollege.logins("STUDENT")) {
            if (people.size() == many) {
                return;
            }
            WebUser person = new WebUser(address).signIn(login, DemoCollege.password());
            List<WebPage.WebForm> found = found(person, each);
            if (found.size() == each) {
                people.add(person);
                forms.add(found);
            }
        }
        if (people.size() < many) {
            throw new IllegalStateException("only " + people.size() + " people have enough slots");
        }
    }

    private static void openUp(URI address) {
        WebUser instructor = new WebUser(address).signIn("ines", DemoCollege.password());
        WebPage page = instructor.get("/book/rules");
        WebPage answer = instructor.submit(page.form("/book/rules")
                .with("horizonDays", "180")
                .with("futurePerPerson", "100")
                .with("weekPerPerson", "100")
                .with("perAssignment", "100")
                .with("reason", "measuring"));
        if (answer.status() != 302) {
            throw new IllegalStateException("the rules were not changed: " + answer.text());
        }
    }

    private List<WebPage.WebForm> found(WebUser person, int each) {
        List<WebPage.WebForm> found = new ArrayList<>();
        LocalDate first = LocalDate.now().plusDays(2);
        for (int day = 0; day < MOST_DAYS && found.size() < each; day++) {
            WebPage page = person.get("/book?day=" + first.plusDays(day));
            List<Element> free = page.document().select("li a.slot[href^=/book/slot]");
            if (day > 10 && found.isEmpty()) {
                return found;
            }
            for (Element link : free) {
                if (wanted.add(link.attr("href"))) {
                    WebPage form = person.get(link.attr("href"));
                    if (isLonger(form)) {
                        wanted.remove(link.attr("href"));
                        return List.of();
                    }
                    if (form.html().contains("action=\"/book\"")) {
                        found.add(form.form("/book").with("attendant", "").with("purpose", ""));
                    }
                    break;
                }
            }
        }
        return found;
    }

    private static boolean isLonger(WebPage form) {
        Matcher span = SPAN.matcher(form.document().select("h1").text());
        return span.find()
                && Duration.between(LocalTime.parse(span.group(1)), LocalTime.parse(span.group(2)))
                                .compareTo(USUAL)
                        > 0;
    }

    /** Sends one form; says whether the slot is booked. */
    boolean send(int who, int number) {
        WebPage answer = people.get(who).submit(forms.get(who).get(number));
        return answer.status() == 302 && String.valueOf(answer.location()).contains("/bookings/");
    }
}
