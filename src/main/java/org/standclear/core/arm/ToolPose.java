package org.standclear.core.arm;

import org.standclear.core.geometry.Vector;

/**
 * Where the tool point stands and how the tool is turned.
 *
 * @param yaw deg, counter-clockwise seen from above
 */
public record ToolPose(Vector place, double yaw) {}
