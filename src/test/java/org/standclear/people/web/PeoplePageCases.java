package org.standclear.people.web;

import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.standclear.people.CourseRegister;
import org.standclear.people.Courses;
import org.standclear.people.People;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Outcome;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.people.SigningPins;
import org.standclear.platform.security.Role;
import org.standclear.testing.web.WebUser;

/** What tests of the people pages share: accounts that sign in. */
abstract class PeoplePageCases {

    static final String PASSWORD = "a lamp over tern hall";

    @LocalServerPort
    int port;

    @Autowired
    PeopleRegister register;

    @Autowired
    People people;

    @Autowired
    CourseRegister courseRegister;

    @Autowired
    Courses courses;

    @Autowired
    SigningPins pins;

    @Autowired
    PasswordEncoder encoder;

    final String tag = UUID.randomUUID().toString().substring(0, 8);
    WebUser admin = WebUser.atPort(0);

    @BeforeEach
    void signIn() {
        admin = signedIn(add("Ada Administrator", Role.ADMINISTRATOR));
    }

    Person add(String name, Role... roles) {
        Password hashed = new Password.Hashed(String.valueOf(encoder.encode(PASSWORD)));
        return ((Outcome.Done) register.add(new NewPerson("w" + UUID.randomUUID(), name, Set.of(roles), hashed, null)))
                .person();
    }

    WebUser signedIn(Person person) {
        return WebUser.atPort(port).signIn(person.login(), PASSWORD);
    }
}
