/** Reads terms and weeks from the tables of the other features, and keeps what was read and signed. */
@NullMarked
package org.standclear.report.records;

import org.jspecify.annotations.NullMarked;
