package org.duskline.web.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.prove.Proof;
import org.duskline.analyzer.prove.ProofResult;
import org.duskline.analyzer.prove.ProofSize;
import org.duskline.analyzer.season.Level;
import org.duskline.analyzer.season.SeasonFiles;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
        name = "prove",
        description = "Plays synthetic seasons of known truth through the detection and prints what was promised beside"
                + " what was measured. All seasons are invented.")
final class ProveCommand implements Callable<Integer> {
    private static final int STEPS = 1000;

    /** How much is played. */
    enum Size {
        QUICK,
        NIGHTLY
    }

    @Mixin
    private Standard standard;

    @Option(
            names = "--size",
            defaultValue = "quick",
            description = "quick (about a minute) or nightly (some hours). Default: ${DEFAULT-VALUE}.")
    private Size size;

    @Option(names = "--seed", defaultValue = "1", description = "First season's seed. Default: ${DEFAULT-VALUE}.")
    private long seed;

    @Option(
            names = "--level",
            split = ",",
            defaultValue = "clean,typical,harsh",
            description = "clean, typical, harsh. Default: ${DEFAULT-VALUE}.")
    private List<Level> levels;

    @Option(names = "--seasons", description = "Seasons of each level, instead of the size's own number.")
    private Integer seasons;

    @Option(names = "--traps", description = "Traps on each line, instead of the size's own number.")
    private Integer traps;

    @Option(names = "--days", description = "Days of each season, instead of the size's own number.")
    private Integer days;

    @Option(
            names = "--pictures",
            paramLabel = "FOLDER",
            description = "Also draws the pictures there, as SVG, and the ten worst mistakes.")
    private Path pictures;

    @Option(
            names = "--ablate",
            description = "Also watches each season without one kind of evidence at a time, to show what each buys;"
                    + " takes seven times as long.")
    private boolean ablate;

    @Option(
            names = "--write",
            paramLabel = "FOLDER",
            description = "Writes the first season there as a recorded stream with its line and its truth, and stops.")
    private Path write;

    private final Surroundings surroundings;

    ProveCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        ProofSize asked = asked();
        if (write != null) {
            write(asked);
            return Exit.DONE;
        }
        ProofResult result;
        try (Progress progress = new Progress(surroundings.err(), "Proving", "steps", STEPS)) {
            result = new Proof(asked, seed, levels, Thresholds.defaults(), ablate)
                    .run((done, doing) -> progress.at(Math.round(done * STEPS)));
        }
        surroundings.out().print(result.table());
        if (pictures != null) {
            draw(result);
        }
        return Exit.DONE;
    }

    private ProofSize asked() {
        ProofSize usual = size == Size.NIGHTLY ? ProofSize.nightly() : ProofSize.quick();
        return new ProofSize(
                seasons == null ? usual.seasons() : seasons,
                traps == null ? usual.traps() : traps,
                days == null ? usual.days() : days,
                usual.odds());
    }

    private void write(ProofSize asked) {
        Level level = levels.get(0);
        try {
            SeasonFiles.write(write, seed, level, asked.days(), asked.traps());
        } catch (IOException e) {
            throw Failure.of("The season cannot be written to " + write + ": " + e.getMessage()
                    + ". Check the folder's rights and the disk's free space.");
        }
        surroundings.err().println("Season " + seed + ", " + level.wireName() + ", is in " + write + ".");
    }

    private void draw(ProofResult result) {
        try {
            Files.createDirectories(pictures);
            Files.writeString(pictures.resolve("delay.svg"), result.delaySvg());
            Files.writeString(pictures.resolve("certainty.svg"), result.reliabilitySvg());
            for (Map.Entry<String, String> file : result.worstMistakes().entrySet()) {
                Files.writeString(pictures.resolve(file.getKey()), file.getValue());
            }
            String forecast = result.forecastSvg();
            if (!forecast.isEmpty()) {
                Files.writeString(pictures.resolve("forecast.svg"), forecast);
            }
            String tradeOff = result.tradeOffSvg();
            if (!tradeOff.isEmpty()) {
                Files.writeString(pictures.resolve("trade-off.svg"), tradeOff);
            }
        } catch (IOException e) {
            throw Failure.of("The pictures cannot be written to " + pictures + ": " + e.getMessage()
                    + ". Check the folder's rights and the disk's free space.");
        }
    }
}
