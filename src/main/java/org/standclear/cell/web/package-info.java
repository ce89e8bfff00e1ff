/** Pages about cells: limits and their sources, versions, proposals, tags, day tests. */
@NullMarked
package org.standclear.cell.web;

import org.jspecify.annotations.NullMarked;
