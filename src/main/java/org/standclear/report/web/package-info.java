/** Pages and papers of the reports. */
@NullMarked
package org.standclear.report.web;

import org.jspecify.annotations.NullMarked;
