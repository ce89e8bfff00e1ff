/** What people's records become when their time is over. */
@NullMarked
package org.standclear.people.leaving;

import org.jspecify.annotations.NullMarked;
