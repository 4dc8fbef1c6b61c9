package org.duskline.web.page;

/**
 * What a page or an API answer says when it can't say what was asked.
 *
 * @param status the HTTP status
 * @param title what is wrong, in a few words
 * @param said what happened and where
 * @param next what to do now
 */
public record Trouble(int status, String title, String said, String next) {}
