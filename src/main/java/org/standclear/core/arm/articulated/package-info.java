/**
 * Six-axis arms. The inverse is in closed form where the last three axes meet in one point, axes 2 and 3 are parallel and
 * axis 1 is square to them; for any other table it is looked for step by step from many first guesses, true to 0.0000001 mm
 * and deg; a place that no guess leads to counts as out of reach.
 *
 * <p>What counts as a moving part beside the tool point and the overhang: every link end, that is the origin of each
 * link's frame and, where a link has both d and a, the corner between them. A link is rigid, so a place on the straight
 * line between two of its ends never goes faster than the faster end; how far a casing stands out from these lines is
 * not in the table and is not counted.
 */
@NullMarked
package org.standclear.core.arm.articulated;

import org.jspecify.annotations.NullMarked;
