/** What the doors of people promise, on both engines. */
@NullMarked
package org.standclear.people;

import org.jspecify.annotations.NullMarked;
