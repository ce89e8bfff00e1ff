/** Support for tests that look at pages in a real Chromium as a person would: by labels, buttons and links. */
@NullMarked
package org.standclear.testing.browser;

import org.jspecify.annotations.NullMarked;
