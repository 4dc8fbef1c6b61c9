/**
 * The program's settings: which there are, what they mean, and how they are read from the YAML file and from the
 * environment.
 * <p>May import {@code collector}'s addresses and {@code deliver}'s mail settings. Starts nothing and opens nothing but the file.
 */
package org.duskline.web.settings;
