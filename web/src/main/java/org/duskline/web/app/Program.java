package org.duskline.web.app;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.duskline.collector.intake.BrokerProblem;
import org.duskline.collector.intake.StreamProblem;
import org.duskline.collector.store.StoreProblem;
import org.duskline.collector.trap.LineProblem;
import org.duskline.web.door.DoorRefusal;
import org.duskline.web.settings.SettingsMistake;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.Spec;

/** The command line: which commands there are, and how their mistakes are told. */
@Command(
        name = "duskline",
        description = "Watches a line of swarm traps and says which one has filled, while it can still be closed.",
        synopsisSubcommandLabel = "COMMAND",
        mixinStandardHelpOptions = true,
        versionProvider = Program.Version.class,
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "1:failed; standard error says why",
            "2:asked wrongly: a mistake on the command line or in the settings"
        },
        footer = {"", "\"duskline COMMAND --help\" explains a command; \"duskline demo\" shows the whole."})
final class Program implements Runnable {
    @Spec
    private CommandSpec spec;

    private Program() {}

    /** Runs one command line and returns the exit code. */
    static int run(Surroundings surroundings, String... arguments) {
        Logs.quiet();
        return commandLine(surroundings).execute(arguments);
    }

    static CommandLine commandLine(Surroundings surroundings) {
        CommandLine commandLine = new CommandLine(new Program());
        commandLine.addSubcommand(new DemoCommand(surroundings));
        commandLine.addSubcommand(new RunCommand(surroundings));
        commandLine.addSubcommand(new ImportCommand(surroundings));
        commandLine.addSubcommand(new FindingsCommand(surroundings));
        commandLine.addSubcommand(new ExportCommand(surroundings));
        commandLine.addSubcommand(new ReplayCommand(surroundings));
        commandLine.addSubcommand(new TuneCommand(surroundings));
        commandLine.addSubcommand(new WhyCommand(surroundings));
        commandLine.addSubcommand(new RecordCommand(surroundings));
        commandLine.addSubcommand(new OwnerCommand(surroundings));
        commandLine.addSubcommand(new PasswordCommand(surroundings));
        commandLine.addSubcommand(new DoctorCommand(surroundings));
        commandLine.addSubcommand(new SettingsCommand(surroundings));
        commandLine.addSubcommand(new ProveCommand(surroundings));
        commandLine.setOut(writer(surroundings.out()));
        commandLine.setErr(writer(surroundings.err()));
        commandLine.setUsageHelpAutoWidth(true);
        commandLine.setCaseInsensitiveEnumValuesAllowed(true);
        commandLine.registerConverter(int.class, Mistyped::wholeNumber);
        commandLine.registerConverter(double.class, Mistyped::number);
        commandLine.setParameterExceptionHandler(Program::askedWrongly);
        commandLine.setExecutionExceptionHandler(Program::failed);
        return commandLine;
    }

    private static PrintWriter writer(PrintStream stream) {
        return new PrintWriter(stream, true, StandardCharsets.UTF_8);
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Which command? \"duskline --help\" lists them.");
    }

    private static int askedWrongly(ParameterException mistake, String[] arguments) {
        CommandLine asked = mistake.getCommandLine();
        PrintWriter err = asked.getErr();
        err.println(Mistyped.words(mistake));
        err.println("\"" + asked.getCommandSpec().qualifiedName() + " --help\" explains it.");
        return Exit.ASKED_WRONGLY;
    }

    private static int failed(Exception failure, CommandLine asked, ParseResult parsed) throws Exception {
        if (failure instanceof SettingsMistake) {
            asked.getErr().println(failure.getMessage());
            return Exit.ASKED_WRONGLY;
        }
        if (failure instanceof Failure told) {
            asked.getErr().println(told.getMessage());
            return told.exit();
        }
        if (failure instanceof StoreProblem
                || failure instanceof StreamProblem
                || failure instanceof LineProblem
                || failure instanceof BrokerProblem
                || failure instanceof DoorRefusal) {
            asked.getErr().println(failure.getMessage());
            return Exit.FAILED;
        }
        throw failure;
    }

    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = Program.class.getPackage().getImplementationVersion();
            return new String[] {"duskline " + (version == null ? "(built from source)" : version)};
        }
    }
}
