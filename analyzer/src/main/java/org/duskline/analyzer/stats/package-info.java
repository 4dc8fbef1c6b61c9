/**
 * Textbook statistics: control charts and their run lengths, robust location and scale, change points, exact intervals
 * for counts and proportions, the judging of forecasts, and counter losses.
 * <p>Numbers in, numbers out. A leaf: imports nothing of the project. Each formula names its source. What is special to
 * bees, boxes or scales never belongs here.
 */
package org.duskline.analyzer.stats;
