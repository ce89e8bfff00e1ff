/** Pages that break the rules for pages. */
@NullMarked
package org.standclear.architecture.planted.web;

import org.jspecify.annotations.NullMarked;
