/** Error pages and what all pages share. */
@NullMarked
package org.standclear.platform.web;

import org.jspecify.annotations.NullMarked;
