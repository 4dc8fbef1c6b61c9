/**
 * The pages, the API beside them, and the live feed: what the {@code board} says goes in, HTML, JSON, CSV and
 * server-sent events come out. {@link org.duskline.web.page.Pages} is the entry.
 * <p>May import the collector's and the analyzer's values. The only package of the project that speaks HTTP to a
 * browser. Never reads a database, never decides anything about bees. Routes run on the server's threads; nothing here
 * keeps state beyond the open live connections.
 */
package org.duskline.web.page;
