/** Roles, the signed-in person, and who may use which route; denies by default. */
@NullMarked
package org.standclear.platform.security;

import org.jspecify.annotations.NullMarked;
