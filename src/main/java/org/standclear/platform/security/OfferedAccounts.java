package org.standclear.platform.security;

import java.util.List;

/** Accounts that the sign-in page offers to everybody, password included; only the demo has any. */
public interface OfferedAccounts {

    /** The accounts, in the order in which they are shown. */
    List<Account> accounts();

    /** The password of all of them. */
    String password();

    /** The signing PIN of all of them that are people. */
    String pin();

    /**
     * One account.
     *
     * @param does what it is good for, in a few words
     */
    record Account(String login, String printedName, String does) {}
}
