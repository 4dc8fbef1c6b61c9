/**
 * The pages, the API beside them, and the live feed: what the {@code board} says goes in, HTML, JSON, CSV and
 * server-sent events come out. {@link org.duskline.web.page.Pages} is the entry.
 * <p>The gate stands before every route. A page of one's own is a {@link org.duskline.web.page.Part}, given to
 * {@code Pages}; in its handlers {@link org.duskline.web.page.Visitor#of} says who asks. Every form carries
 * <pre>{@code @template.piece.token(shell = shell)}</pre> and is refused without it; what htmx sends carries the token by
 * itself; a script of ours that fetches sends {@code document.body.dataset.token} as the header {@code Duskline-Token}.
 * A {@code GET} changes nothing. What a program reads without a cookie, such as a calendar, lies at
 * {@code /feeds/{key}/...} with {@link org.duskline.web.page.Visitor#feedToken} as the key. A page without a tab of its own
 * gets a line in {@code piece/furtherplaces.jte}, which the page "More" shows.
 * <p>May import the collector's and the analyzer's values, the logs in which visits and answers are written down, the door,
 * and {@code deliver} for people, their channels and signed links. The only package of the project that speaks HTTP to a
 * browser. Never reads a database, never decides anything about bees. Routes run on the server's threads; nothing here
 * keeps state beyond the open live connections.
 */
package org.duskline.web.page;
