/** The lab itself: name, zone, emergency facts. */
@NullMarked
package org.standclear.platform.lab;

import org.jspecify.annotations.NullMarked;
