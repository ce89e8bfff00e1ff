/** Accounts in the database: finding people, adding them, their roles, passwords and signing PINs. */
@NullMarked
package org.standclear.people.accounts;

import org.jspecify.annotations.NullMarked;
