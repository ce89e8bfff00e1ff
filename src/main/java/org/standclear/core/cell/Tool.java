package org.standclear.core.cell;

import org.standclear.core.geometry.Vector;

/**
 * A tool as the cell file registers it.
 *
 * @param offset from the flange to the tool point, mm; a tool that hangs down has a z below 0
 * @param overhangMm the farthest part of tool and part from the tool point, in any direction
 * @param edges whether it has sharp edges or points
 */
public record Tool(String code, double massKg, Vector offset, double overhangMm, boolean edges) {}
