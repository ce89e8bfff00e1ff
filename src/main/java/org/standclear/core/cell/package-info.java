/** Cell descriptions: the arm, the tools and the limits of one robot cell. */
@NullMarked
package org.standclear.core.cell;

import org.jspecify.annotations.NullMarked;
