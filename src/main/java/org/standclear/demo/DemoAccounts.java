package org.standclear.demo;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.OfferedAccounts;

/** The accounts of the demo, as the sign-in page and the start of the application show them. */
@Component
@Profile("demo")
class DemoAccounts implements OfferedAccounts {

    private final LabSeed lab;
    private final List<Account> accounts;

    DemoAccounts() {
        SeedFiles files = new SeedFiles();
        this.lab = files.lab();
        SecondLabSeed second = files.secondLab();
        // who is in both labs is described for each
        Map<String, PersonSeed> people = Stream.concat(files.people().stream(), second.people().stream())
                .collect(Collectors.toMap(PersonSeed::login, Function.identity(), (here, there) -> here));
        this.accounts = Stream.concat(lab.accounts().stream(), second.accounts().stream())
                .map(shown -> account(shown, people))
                .toList();
    }

    private static Account account(LabSeed.Account shown, Map<String, PersonSeed> people) {
        PersonSeed person = people.get(shown.login());
        if (person == null) {
            throw new IllegalStateException("the seed files show " + shown.login() + ", whom no roster has");
        }
        return new Account(person.login(), person.printedName(), shown.does());
    }

    @Override
    public List<Account> accounts() {
        return accounts;
    }

    @Override
    public String password() {
        return lab.password();
    }

    @Override
    public String pin() {
        return lab.pin();
    }
}
