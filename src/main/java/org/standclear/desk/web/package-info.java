/** The start pages. */
@NullMarked
package org.standclear.desk.web;

import org.jspecify.annotations.NullMarked;
