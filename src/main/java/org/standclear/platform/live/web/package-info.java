/** The event stream that pages listen to. */
@NullMarked
package org.standclear.platform.live.web;

import org.jspecify.annotations.NullMarked;
