package org.standclear.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.Period;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.standclear.message.Message;
import org.standclear.message.Messages;
import org.standclear.people.AuthorisationRegister;
import org.standclear.people.AuthorisationRegister.Grant;
import org.standclear.people.Duty;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.security.Role;
import org.standclear.retention.KeepingTime;
import org.standclear.retention.LegalHold.Target;
import org.standclear.retention.LegalHolds;
import org.standclear.retention.Shortenings;

/** People who were here years ago, so that the page of what is due for disposal has something to show. */
@Component
@Profile("demo")
class LongAgoScript {

    private static final Duration YEAR = Duration.ofDays(365);
    private static final Duration BEFORE = YEAR.multipliedBy(8);

    private final PeopleRegister register;
    private final AuthorisationRegister authorisations;
    private final Messages messages;
    private final LegalHolds holds;

    private final Shortenings shortenings;

    LongAgoScript(
            PeopleRegister register,
            AuthorisationRegister authorisations,
            Messages messages,
            LegalHolds holds,
            Shortenings shortenings) {
        this.register = register;
        this.authorisations = authorisations;
        this.messages = messages;
        this.holds = holds;
        this.shortenings = shortenings;
    }

    /** Two students come, are told things, and leave; one is on legal hold, and a shorter time is proposed, since this term. */
    void write(Timeline timeline, Instant term, Roster roster) {
        Map<String, PersonId> people = new HashMap<>();
        Instant came = term.minus(BEFORE);
        timeline.add(came, () -> {
            people.put("isaura", add("isaura", "Isaura Kettleby", Role.ADMINISTRATOR));
            people.put("perpetua", add("perpetua", "Perpetua Gannet", Role.STUDENT));
            people.put("lorcan", add("lorcan", "Lorcan Vellum-Shaw", Role.STUDENT));
        });
        timeline.add(
                came.plus(Duration.ofDays(3)),
                () -> List.of("perpetua", "lorcan")
                        .forEach(login -> taught(people, login, came.plus(Duration.ofDays(120)))));
        timeline.add(
                came.plus(YEAR),
                () -> List.of("perpetua", "lorcan")
                        .forEach(login -> close(id(people, login), "left the college", id(people, "isaura"))));
        timeline.add(term.plus(Duration.ofHours(3)), () -> {
            close(id(people, "isaura"), "retired", roster.person("marit"));
            holds.place(
                    new Target.One(About.PERSON, id(people, "lorcan").value()),
                    "A claim from that term is open.",
                    "College counsel, letter of this month",
                    roster.person("ines"));
            Expect.that(
                    Shortenings.Proposed.Waits.class,
                    shortenings.propose(
                            RecordKind.MESSAGES,
                            new KeepingTime(Period.ofMonths(6), false),
                            0,
                            roster.person("marit"),
                            "Grades are final a month after the term; half a year is enough for questions."),
                    "proposing a shorter time");
        });
    }

    private PersonId add(String login, String name, Role role) {
        var added = register.add(new NewPerson(login, name, Set.of(role), new Password.Hashed("none"), null));
        return Expect.that(PeopleRegister.Outcome.Done.class, added, "adding " + login)
                .person()
                .id();
    }

    private void taught(Map<String, PersonId> people, String login, Instant until) {
        PersonId person = id(people, login);
        var outcome = authorisations.grant(new Grant(
                person,
                Duty.OPERATOR,
                null,
                until.minus(Duration.ofDays(110)),
                until,
                "Induction passed at the second try",
                id(people, "isaura")));
        Expect.that(AuthorisationRegister.Outcome.Done.class, outcome, "authorising " + login);
        messages.wish(person, Messages.Wishes.plain(login + "@students.tern-hall.example"));
        for (String subject : List.of("Your turn on Monday moves by an hour", "The lab is closed on Friday")) {
            messages.tell(Message.of(person, "note", subject, List.of("Ask at the desk if that does not fit."), "/me"));
        }
    }

    private void close(PersonId person, String reason, PersonId by) {
        Person closed = Expect.that(
                        PeopleRegister.Outcome.Done.class,
                        register.deactivate(person, reason, by),
                        "closing an account")
                .person();
        if (closed.active()) {
            throw new IllegalStateException("the account of " + closed.login() + " is still open");
        }
    }

    private static PersonId id(Map<String, PersonId> people, String login) {
        PersonId found = people.get(login);
        if (found == null) {
            throw new IllegalStateException("the demo's script names nobody called " + login);
        }
        return found;
    }
}
