/** The pages of incidents and corrective actions. */
@NullMarked
package org.standclear.incident.web;

import org.jspecify.annotations.NullMarked;
