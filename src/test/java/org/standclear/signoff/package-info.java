/** Tests of the lists, signatures, releases and lapses. */
@NullMarked
package org.standclear.signoff;

import org.jspecify.annotations.NullMarked;
