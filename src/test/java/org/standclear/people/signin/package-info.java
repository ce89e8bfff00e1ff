/** Checks of signing in and setting up from inside. */
@NullMarked
package org.standclear.people.signin;

import org.jspecify.annotations.NullMarked;
