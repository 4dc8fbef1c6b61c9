/* What differs from node to node. Change it here, build, flash. */
#ifndef DUSKLINE_NODE_CONFIG_H
#define DUSKLINE_NODE_CONFIG_H

/* Lanes fitted, 0 to 8; 0 = this trap has only a scale. */
#ifndef NODE_LANES
#define NODE_LANES 8
#endif
/* 1 = a load cell is fitted; 0 = this trap has only a counter. */
#ifndef NODE_SCALE
#define NODE_SCALE 1
#endif

/* DL_CBOR is half as long on the air; DL_JSON can be read by eye on the bench. */
#ifndef NODE_FORMAT
#define NODE_FORMAT DL_CBOR
#endif

/* From `build/calibrate`; scale.md tells how. Counts per kg of 0 sends raw counts. */
#define NODE_ZERO_COUNTS 0
#define NODE_COUNTS_PER_KG 0

/* Battery (these for one lithium-ion cell; power.md has others): at or below LOW the node samples more rarely, from
 * RECOVERED on as set. */
#define NODE_BATTERY_LOW_MV 3450
#define NODE_BATTERY_RECOVERED_MV 3600
/* Battery voltage divider: millivolts at the battery for 4095 codes at a supply of 3.3 V. */
#define NODE_BATTERY_FULL_SCALE_MV 6600

/* Radio (these for a pair of long-range modules; radio.md has others): milliseconds from its power to the first byte
 * that it carries, and from a pack's last byte to the word that the broker has it. */
#ifndef NODE_RADIO_START_MS
#define NODE_RADIO_START_MS 500
#endif
#ifndef NODE_RADIO_ANSWER_MS
#define NODE_RADIO_ANSWER_MS 8000
#endif

#endif
