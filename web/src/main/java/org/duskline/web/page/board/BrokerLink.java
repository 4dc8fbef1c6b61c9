package org.duskline.web.page.board;

import java.time.Instant;

/**
 * The connection over which samples arrive.
 *
 * @param up whether it stands
 * @param since since when it has been so
 * @param where the broker's address as a person would write it, without a password
 */
public record BrokerLink(boolean up, Instant since, String where) {}
