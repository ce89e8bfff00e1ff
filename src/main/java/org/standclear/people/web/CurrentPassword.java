package org.standclear.people.web;

import org.springframework.stereotype.Component;
import org.standclear.people.accounts.Credentials;
import org.standclear.people.accounts.Credentials.Compared;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** Asks for the password once more before something that a borrowed session must not do. */
@Component
class CurrentPassword {

    static final String FIELD = "current";

    private final Credentials credentials;
    private final LabTime labTime;

    CurrentPassword(Credentials credentials, LabTime labTime) {
        this.credentials = credentials;
        this.labTime = labTime;
    }

    /** Whether it is right; leaves a sentence at the field when it is not. */
    boolean isRight(Typed typed, SignedInPerson me) {
        Compared compared = credentials.compare(me.getUsername(), typed.raw(FIELD));
        if (compared instanceof Compared.Paused paused) {
            typed.refuse(
                    FIELD, "Too many tries. The next one is looked at from " + labTime.seconds(paused.until()) + ".");
        } else if (compared instanceof Compared.Wrong) {
            typed.refuse(FIELD, "This is not your password.");
        }
        return compared instanceof Compared.Right;
    }
}
