/** Bad examples on purpose, so that every rule can be seen to catch one; nothing here is part of the application. */
@NullMarked
package org.standclear.architecture.planted;

import org.jspecify.annotations.NullMarked;
