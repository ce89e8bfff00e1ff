/** The pages of keeping and disposing. */
@NullMarked
package org.standclear.retention.web;

import org.jspecify.annotations.NullMarked;
