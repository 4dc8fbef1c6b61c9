/**
 * The one SQLite file: samples clustered by node and time, packs in the order of their arrival, nodes, fittings,
 * calibrations and damage.
 * <p>May import {@code wire} and {@code trap}. The only package of this module that speaks SQL.
 */
package org.duskline.collector.store;
