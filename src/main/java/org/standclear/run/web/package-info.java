/** The bench screens and the pages of runs. */
@NullMarked
package org.standclear.run.web;

import org.jspecify.annotations.NullMarked;
