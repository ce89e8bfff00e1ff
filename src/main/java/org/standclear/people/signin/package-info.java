/** Signing in with a password, the pause after wrong tries, and the first administrator. */
@NullMarked
package org.standclear.people.signin;

import org.jspecify.annotations.NullMarked;
