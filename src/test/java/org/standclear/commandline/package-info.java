/** Tests of the commands. */
package org.standclear.commandline;
