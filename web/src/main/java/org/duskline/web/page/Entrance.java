package org.duskline.web.page;

import org.duskline.web.door.Door;

/**
 * How the pages are entered.
 *
 * @param door accounts and sessions
 * @param openHouse whether everybody on this machine is let in as long as nobody has an account: for the demo alone
 * @param encrypted whether browsers reach the pages by https, so that they must never send the cookie without
 */
public record Entrance(Door door, boolean openHouse, boolean encrypted) {}
