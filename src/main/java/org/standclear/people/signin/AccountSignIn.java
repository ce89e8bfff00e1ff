package org.standclear.people.signin;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.authentication.AuthenticationProvider;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.stereotype.Component;
import org.standclear.people.Person;
import org.standclear.people.accounts.Credentials;
import org.standclear.people.accounts.Credentials.Compared;
import org.standclear.people.tries.Tries;
import org.standclear.people.tries.Tries.Begun;
import org.standclear.people.tries.Tries.Kind;
import org.standclear.platform.security.SignInPausedException;
import org.standclear.platform.security.SignedInPerson;

/** Signs a person in by name and password; tries are counted for the account and for the client's address. */
@Component
class AccountSignIn implements AuthenticationProvider {

    private static final Logger LOG = LoggerFactory.getLogger(AccountSignIn.class);

    private final Credentials credentials;
    private final Tries tries;

    AccountSignIn(Credentials credentials, Tries tries) {
        this.credentials = credentials;
        this.tries = tries;
    }

    @Override
    public Authentication authenticate(Authentication asked) {
        String address = ClientAddress.of(asked);
        Begun begun = tries.begin(Kind.ADDRESS, address);
        if (begun instanceof Begun.Paused paused) {
            LOG.info("sign-in paused for {} until {}", address, paused.until());
            throw new SignInPausedException(paused.until());
        }
        Begun.Go go = (Begun.Go) begun;
        Compared compared = credentials.compare(asked.getName(), String.valueOf(asked.getCredentials()));
        if (compared instanceof Compared.Paused paused) {
            // nothing was compared: one person at a paused account must not use up the tries of the whole room
            tries.takeBack(Kind.ADDRESS, address, go);
            throw new SignInPausedException(paused.until());
        }
        if (!(compared instanceof Compared.Right right)) {
            LOG.info("sign-in refused for {}", address);
            throw new BadCredentialsException("refused");
        }
        tries.takeBack(Kind.ADDRESS, address, go);
        return signedIn(right.person(), asked);
    }

    private static Authentication signedIn(Person person, Authentication asked) {
        SignedInPerson principal =
                new SignedInPerson(person.id(), person.login(), person.printedName(), person.roles(), null);
        UsernamePasswordAuthenticationToken token =
                UsernamePasswordAuthenticationToken.authenticated(principal, null, principal.getAuthorities());
        token.setDetails(asked.getDetails());
        return token;
    }

    @Override
    public boolean supports(Class<?> authentication) {
        return UsernamePasswordAuthenticationToken.class.isAssignableFrom(authentication);
    }
}
