/** Whole terms of a lab's life from a seed, played through the application's services, and audited from outside. */
@NullMarked
package org.standclear.simulation;

import org.jspecify.annotations.NullMarked;
