package org.standclear.screens;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.standclear.testing.DemoCollege;
import org.standclear.testing.DemoOnH2;
import org.standclear.testing.DemoOnPostgres;
import org.standclear.testing.web.SiteWalk;
import org.standclear.testing.web.WebUser;

/** No page shows a person a link that leads nowhere, or to something that is not theirs to see. */
class LinksIT {

    abstract static class Cases {

        @LocalServerPort
        int port;

        @ParameterizedTest
        @CsvSource({
            "STUDENT, 4",
            "TECHNICIAN, 6",
            "INSTRUCTOR, 6",
            "REVIEWER, 3",
            "ADMINISTRATOR, 3",
            "BENCH, 1",
        })
        void everyLinkLeadsToAPage(String role, int fewestKinds) {
            String login = DemoCollege.logins(role).get(0);
            WebUser person = WebUser.atPort(port).signIn(login, DemoCollege.password());

            SiteWalk walk = SiteWalk.from("/", person);

            assertThat(walk.deadLinks()).as("dead links that %s sees", login).isEmpty();
            assertThat(walk.pages()).as("kinds of pages that %s sees", login).hasSizeGreaterThanOrEqualTo(fewestKinds);
        }
    }

    @Nested
    @DemoOnH2
    class OnH2Engine extends Cases {}

    @Nested
    @DemoOnPostgres
    class OnPostgresEngine extends Cases {}
}
