/** The page of a person's messages. */
@NullMarked
package org.standclear.message.web;

import org.jspecify.annotations.NullMarked;
