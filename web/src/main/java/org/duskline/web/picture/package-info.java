/**
 * The small picture of a trap's curve that goes with an alert: a stretch of the curve goes in, PNG comes out.
 * <p>May import the analyser's curve, the collector's traps and the board's curves. Draws into memory alone: no window, no
 * file, no network, no clock. Without a font on the machine the picture is drawn without its letters.
 */
package org.duskline.web.picture;
