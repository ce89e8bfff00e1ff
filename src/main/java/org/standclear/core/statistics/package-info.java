/** Exact statistics of small counts: intervals that go with a count or a share, and the comparison of two counts. */
@NullMarked
package org.standclear.core.statistics;

import org.jspecify.annotations.NullMarked;
