/** Photos as they are taken in: looked at before they are decoded, and made anew. */
@NullMarked
package org.standclear.incident.photos;

import org.jspecify.annotations.NullMarked;
