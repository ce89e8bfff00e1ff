/** Pages about programs and what the check answers about them. */
@NullMarked
package org.standclear.check.web;

import org.jspecify.annotations.NullMarked;
