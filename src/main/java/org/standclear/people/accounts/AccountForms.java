package org.standclear.people.accounts;

import java.util.regex.Pattern;

/** What a sign-in name may look like, wherever one comes in. */
public final class AccountForms {

    static final Pattern LOGIN = Pattern.compile("[a-z0-9][a-z0-9._@-]{1,59}");

    private AccountForms() {}

    /** Whether it is one; capitals are made small before. */
    public static boolean isLogin(String login) {
        return LOGIN.matcher(login).matches();
    }
}
