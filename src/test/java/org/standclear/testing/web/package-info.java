/** Support for tests that use the application through HTTP as a browser without scripts does. */
@NullMarked
package org.standclear.testing.web;

import org.jspecify.annotations.NullMarked;
