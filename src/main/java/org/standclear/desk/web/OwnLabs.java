package org.standclear.desk.web;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.AccountStates;
import org.standclear.platform.security.SignedInPerson;

/** Looks into each lab that a person has a part in, with a note on whose clock the times of another lab are. */
@Component
class OwnLabs {

    private final Labs labs;
    private final AccountStates accounts;

    OwnLabs(Labs labs, AccountStates accounts) {
        this.labs = labs;
        this.accounts = accounts;
    }

    /** What the look finds in all of them together; the note follows a time and is empty for the present lab. */
    <T> List<T> of(SignedInPerson me, Function<String, List<T>> look) {
        Lab here = labs.theLab();
        List<T> found = new ArrayList<>(look.apply(""));
        if (labs.areSeveral()) {
            accounts.of(me.id())
                    .ifPresent(account -> labs.all().stream()
                            .filter(lab ->
                                    account.worksIn(lab.id()) && !lab.id().equals(here.id()))
                            .forEach(lab -> found.addAll(LabScope.in(lab.id(), () -> look.apply(lab.seenFrom(here))))));
        }
        return found;
    }
}
