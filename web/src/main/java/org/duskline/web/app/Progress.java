package org.duskline.web.app;

import java.io.PrintStream;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** Shows on standard error how far long work has come. */
final class Progress implements AutoCloseable {
    private static final int WIDTH = 78;
    private static final int OFTEN_MILLIS = 250;
    private static final long MEGABYTE = 1_000_000;

    private final ProgressBar bar;

    /**
     * @param task what is being done, in a word
     * @param unit {@code MB} for bytes, shown in millions; otherwise the plural of what is counted
     * @param total how many there are
     */
    Progress(PrintStream err, String task, String unit, long total) {
        ProgressBarBuilder builder = ProgressBar.builder()
                .setTaskName(task)
                .setInitialMax(total)
                .setStyle(ProgressBarStyle.ASCII)
                .setUpdateIntervalMillis(OFTEN_MILLIS)
                .setConsumer(new ConsoleProgressBarConsumer(err, WIDTH));
        this.bar = builder.setUnit(" " + unit, unit.equals("MB") ? MEGABYTE : 1).build();
    }

    void at(long done) {
        bar.stepTo(done);
    }

    @Override
    public void close() {
        bar.close();
    }
}
