package org.duskline.analyzer.visit;

import org.duskline.collector.store.Store;

/** The tables of this package in the one SQLite file. */
final class VisitTables {
    private VisitTables() {}

    static void bringUpToDate(Store store) {
        store.migrate("visit_history", "classpath:org/duskline/analyzer/visit");
    }
}
