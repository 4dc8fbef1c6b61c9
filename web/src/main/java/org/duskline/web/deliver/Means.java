package org.duskline.web.deliver;

/** How a channel carries what is told. */
public enum Means {
    /** The address is a mailbox. */
    EMAIL,
    /** The address is an http or https URL; the secret signs what is sent there. */
    WEBHOOK,
    /** The broker; the address is the last level of the topic. */
    MQTT,
    /** The program's own log; the address is not used. */
    LOG
}
