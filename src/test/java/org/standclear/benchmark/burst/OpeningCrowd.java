package org.standclear.benchmark.burst;

import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.platform.ids.PersonId;
import org.standclear.testing.DemoCollege;
import org.standclear.testing.web.WebPage.WebForm;
import org.standclear.testing.web.WebUser;

/** Many more students than the demo college has, each with what one of its students has, signed in before the clock starts. */
final class OpeningCrowd {

    /** Whose password, authorisations and section the others get. */
    private static final String MODEL = "lars.cinderglen";

    private static final int SIGNING_IN_AT_ONCE = 4;

    private static final List<String> PLANTED = List.of("""
            insert into people (id, login, printed_name, sort_name, password_hash, must_change_password, pin_hash, active,
                version, created_at)
            select :id, :login, :name, lower(:name), p.password_hash, false, p.pin_hash, true, 1, p.created_at
            from people p where p.login = :model""", """
            insert into person_roles (person_id, lab_id, role)
            select :id, r.lab_id, r.role from person_roles r join people p on p.id = r.person_id where p.login = :model""", """
            insert into authorisations (id, person_id, duty, cell_id, valid_from, valid_until, granted_by, granted_at, reason,
                lab_id)
            select gen_random_uuid(), :id, a.duty, a.cell_id, a.valid_from, a.valid_until, a.granted_by, a.granted_at, a.reason,
                a.lab_id
            from authorisations a join people p on p.id = a.person_id
            where p.login = :model and a.revoked_at is null""", """
            insert into enrolments (person_id, section_id, enrolled_at)
            select :id, e.section_id, e.enrolled_at from enrolments e join people p on p.id = e.person_id
            where p.login = :model""");

    private final JdbcClient jdbc;
    private final List<URI> instances;

    OpeningCrowd(JdbcClient jdbc, List<URI> instances) {
        this.jdbc = jdbc;
        this.instances = instances;
    }

    /**
     * One of the crowd.
     *
     * @param form the booking form as it was opened before, to be filled in with another slot
     */
    record Member(PersonId person, Visitor visitor, WebForm form) {}

    /** So many people, planted and signed in, who have all opened the form at that address. */
    List<Member> gathered(int many, String formAt) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(SIGNING_IN_AT_ONCE);
        List<Future<Member>> coming = new ArrayList<>();
        for (int i = 0; i < many; i++) {
            int number = i;
            PersonId person = planted(number);
            coming.add(threads.submit(() -> signedIn(person, number, formAt)));
        }
        List<Member> members = new ArrayList<>();
        for (Future<Member> one : coming) {
            members.add(one.get());
        }
        threads.shutdown();
        return members;
    }

    private static String login(int number) {
        return "opening" + number;
    }

    private PersonId planted(int number) {
        PersonId person = PersonId.next();
        for (String sql : PLANTED) {
            // statements that do not name a parameter leave it unused
            jdbc.sql(sql)
                    .param("id", person.value())
                    .param("login", login(number))
                    .param("name", "Opening " + number)
                    .param("model", MODEL)
                    .update();
        }
        return person;
    }

    private Member signedIn(PersonId person, int number, String formAt) {
        WebUser browser =
                new WebUser(instances.get(number % instances.size())).signIn(login(number), DemoCollege.password());
        WebForm form = browser.get(formAt).form("/book").with("attendant", "").with("purpose", "");
        return new Member(person, new Visitor(instances, browser.cookieHeader()), form);
    }
}
