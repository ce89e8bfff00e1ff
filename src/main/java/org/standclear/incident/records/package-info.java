/** The tables of incidents, and the services over them. */
@NullMarked
package org.standclear.incident.records;

import org.jspecify.annotations.NullMarked;
