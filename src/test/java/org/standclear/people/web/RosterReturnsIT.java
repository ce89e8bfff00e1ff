package org.standclear.people.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.SampleLab;
import org.standclear.people.Person;
import org.standclear.people.RosterImports;
import org.standclear.people.RosterImports.Return;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** The page of a roster that was taken back names what came back, whose account was closed, and who was told. */
class RosterReturnsIT {

    abstract static class Cases extends RosterCases {

        private static final String HEADER = "login,name,course,section\n";
        private static final int LISTED = 100;
        private static final int MANY = 103;

        @Autowired
        RosterImports rosters;

        private String undone(String file) {
            String roster = location(sendFile(file));
            location(apply(roster, "takeOut", "true"));
            location(act(roster + "/undo"));
            return roster;
        }

        private static List<String> lines(Document page) {
            return page.select("section[aria-labelledby=back] tbody tr").stream()
                    .map(Element::text)
                    .toList();
        }

        @Test
        void listsWhoIsBackWhoseEnrolmentEndedAndWhoseAccountWasClosed() {
            SampleLab lab = new SampleLab(application);
            Person kofi = lab.student("Kofi Marblewood");
            Person yuki = lab.student("Yuki Halfmoon");
            lab.booked(lab.cell(7), "2026-03-12T12:07:00Z", kofi, null);
            done(register.enrol(kofi.id(), Objects.requireNonNull(second), null));
            done(register.enrol(yuki.id(), Objects.requireNonNull(first), null));

            String roster = undone(HEADER + line("noor", "Noor Candlewick", "01"));

            Document page = page(get(roster), ines());
            assertThat(page.select("h1").text()).isEqualTo("Taken back: term.csv");
            assertThat(lines(page))
                    .containsExactly(
                            "Yuki Halfmoon " + course + "-01 is back",
                            "Kofi Marblewood " + course + "-02 is back 1 booking, which stays",
                            "Noor Candlewick " + course + "-01 enrolment ended",
                            "Noor Candlewick account closed");
            assertThat(page.text())
                    .contains(
                            "2 places in sections came back.",
                            "1 enrolment ended.",
                            "1 account was closed.",
                            "1 person with 1 booking ahead was told");
        }

        @Test
        void doesNotListWhatSomebodyHadPutRightBefore() {
            Person yuki = new SampleLab(application).student("Yuki Halfmoon");
            done(register.enrol(yuki.id(), Objects.requireNonNull(first), null));
            String roster = location(sendFile(HEADER + line("noor", "Noor Candlewick", "01")));
            location(apply(roster, "takeOut", "true"));
            done(register.enrol(yuki.id(), Objects.requireNonNull(first), null));

            location(act(roster + "/undo"));

            assertThat(lines(page(get(roster), ines()))).hasSize(2).noneMatch(line -> line.contains("Yuki Halfmoon"));
        }

        @Test
        void saysWhenThereWasNothingToTakeBack() {
            Person yuki = new SampleLab(application).student("Yuki Halfmoon");
            done(register.enrol(yuki.id(), Objects.requireNonNull(first), null));

            String roster = undone(HEADER + yuki.login() + ",Yuki Halfmoon," + course + ",01\n");

            Document page = page(get(roster), ines());
            assertThat(page.text()).contains("No account was closed and nobody’s section changed.");
            assertThat(lines(page)).isEmpty();
        }

        @Test
        void turnsThePageWhenItIsLong() {
            StringBuilder file = new StringBuilder(HEADER);
            for (int number = 0; number < MANY; number++) {
                file.append(line("s" + number + "-", "Student Number" + number, "01"));
            }

            String roster = undone(file.toString());

            Document first = page(get(roster), ines());
            assertThat(lines(first)).hasSize(LISTED);
            assertThat(first.text()).contains(MANY + " enrolments ended.", MANY + " accounts were closed.");
            int seen = LISTED;
            Document page = first;
            while (page.selectFirst("nav.pager a[rel=next]") != null) {
                page = page(
                        get(Objects.requireNonNull(page.selectFirst("nav.pager a[rel=next]"))
                                .attr("href")),
                        ines());
                seen += lines(page).size();
                assertThat(lines(first)).doesNotContainAnyElementsOf(lines(page));
            }
            assertThat(seen).isEqualTo(2 * MANY);
            assertThat(rosters.returns(UUID.fromString(roster.substring(roster.lastIndexOf('/') + 1)), 0, 300))
                    .extracting(Return::number)
                    .isSorted()
                    .doesNotHaveDuplicates()
                    .hasSize(2 * MANY);
        }

        @Test
        void listsNothingOfOneThatStands() {
            String roster = location(sendFile(HEADER + line("noor", "Noor Candlewick", "01")));
            location(apply(roster));

            assertThat(page(get(roster), ines()).select("#back")).isEmpty();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
