/**
 * What the analyser concludes: kinds, findings, evidence, rivals, and the condition of a trap.
 * <p>Values only. Imports nothing of the project.
 */
package org.duskline.analyzer.finding;
