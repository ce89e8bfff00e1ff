/** Tests of the rules, and what they are asked about. */
@NullMarked
package org.standclear.signoff.rules;

import org.jspecify.annotations.NullMarked;
