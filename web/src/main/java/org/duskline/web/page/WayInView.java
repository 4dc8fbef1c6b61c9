package org.duskline.web.page;

/**
 * A page at which somebody comes in or sees to their account.
 *
 * @param name what they gave as their name
 * @param to where they go from there
 * @param complaint why it was refused; empty if it was not
 * @param owned whether anybody has an account yet
 */
public record WayInView(String name, String to, String complaint, boolean owned) {}
