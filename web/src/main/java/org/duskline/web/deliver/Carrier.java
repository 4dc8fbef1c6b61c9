package org.duskline.web.deliver;

/** Carries a parcel by one means. Returns within a minute whatever the other side does. */
interface Carrier {
    Outcome carry(Channel channel, Parcel parcel);
}
