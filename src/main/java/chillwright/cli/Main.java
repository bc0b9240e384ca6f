package chillwright.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.logging.Level;
import java.util.logging.Logger;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** The command {@code chillwright}; on its own it shows its help. */
@Command(
    name = "chillwright",
    mixinStandardHelpOptions = true,
    versionProvider = Main.Version.class,
    description = {
      "Tells a kitchen what its temperature log shows and until when its food keeps.",
      "A verdict is about the record, not about the food; the local health authority decides."
    })
public final class Main implements Runnable {
  /** Held on to, since a logger that nobody holds forgets its level. */
  private static final Logger ROOT_LOG = Logger.getLogger("");

  @Spec private CommandSpec spec;

  /** Runs one command line and ends with its exit code. */
  public static void main(String[] args) {
    quieten();
    int code = execute(Clock.systemUTC(), console(), args);
    // Leaving on success would stop a server that a command has just started.
    if (code != CommandLine.ExitCode.OK) {
      System.exit(code);
    }
  }

  /** Libraries speak up only when something is wrong. */
  static void quieten() {
    System.setProperty("org.jooq.no-logo", "true");
    System.setProperty("org.jooq.no-tips", "true");
    ROOT_LOG.setLevel(Level.WARNING);
  }

  /** Speaks to standard output and error in UTF-8. */
  private static Console console() {
    return new Console(writer(FileDescriptor.out), writer(FileDescriptor.err), isWatched());
  }

  /** The commands in the order of the help, each made only when asked for. */
  private static Map<String, Supplier<Object>> commands(Clock clock, Console console) {
    Map<String, Supplier<Object>> commands = new LinkedHashMap<>();
    commands.put("serve", () -> new ServeCommand(clock, console));
    commands.put("demo", () -> new DemoCommand(clock, console));
    commands.put("check", () -> new CheckCommand(clock, console));
    commands.put("import", () -> new ImportCommand(clock, console));
    commands.put("keep", () -> new KeepCommand(clock, console));
    commands.put("ahead", () -> AheadCommand.of(clock, console));
    commands.put("plan", () -> new PlanCommand(clock, console));
    commands.put("rules", () -> new RulesCommand(clock, console));
    commands.put("kitchen", () -> new KitchenCommand(clock, console));
    commands.put("cooling-methods", () -> new CoolingMethodsCommand(clock, console));
    commands.put("recompute", () -> new RecomputeCommand(clock, console));
    return commands;
  }

  /** All commands, speaking to that console. */
  static CommandLine commandLine(Clock clock, Console console) {
    return commandLine(commands(clock, console).values(), console);
  }

  /**
   * Runs one command line. Only the command that it names is made, since all that the others say of
   * themselves takes longer to read than a small log takes to check.
   */
  static int execute(Clock clock, Console console, String... words) {
    Map<String, Supplier<Object>> all = commands(clock, console);
    Optional<Supplier<Object>> named = Arrays.stream(words).findFirst().map(all::get);
    return commandLine(named.map(List::of).orElseGet(() -> List.copyOf(all.values())), console)
        .execute(words);
  }

  private static CommandLine commandLine(Collection<Supplier<Object>> commands, Console console) {
    CommandLine line = new CommandLine(new Main());
    commands.forEach(command -> line.addSubcommand(command.get()));
    IParameterExceptionHandler usual = line.getParameterExceptionHandler();
    return line.registerConverter(LocalDate.class, Main::date)
        .setParameterExceptionHandler((fault, words) -> unread(fault, words, usual))
        .setUsageHelpWidth(100)
        .setOut(console.out())
        .setErr(console.err())
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setExecutionExceptionHandler((fault, parsed, result) -> Faults.report(fault, console));
  }

  /** A value that cannot be read is told in a line; anything else with how the command is used. */
  private static int unread(
      ParameterException fault, String[] words, IParameterExceptionHandler usual) throws Exception {
    boolean isValue = fault.getClass() == ParameterException.class && fault.getArgSpec() != null;
    if (!isValue) {
      return usual.handleParseException(fault, words);
    }
    fault.getCommandLine().getErr().println(fault.getMessage());
    return Faults.WRONG;
  }

  private static LocalDate date(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeException unreadable) {
      throw new TypeConversionException("'" + text + "' is no date. Write it like 2026-11-22.");
    }
  }

  /** Whether standard output is a terminal. */
  @SuppressWarnings("SystemConsoleNull") // Java 22 and later always give one, and it is asked.
  private static boolean isWatched() {
    return System.console() != null && isTerminal() && !"dumb".equals(System.getenv("TERM"));
  }

  private static boolean isTerminal() {
    try {
      return (boolean) java.io.Console.class.getMethod("isTerminal").invoke(System.console());
    } catch (NoSuchMethodException beforeJava22) {
      // There is a console only where there is a terminal.
      return true;
    } catch (ReflectiveOperationException untold) {
      return false;
    }
  }

  private static PrintWriter writer(FileDescriptor stream) {
    return new PrintWriter(
        new OutputStreamWriter(new FileOutputStream(stream), StandardCharsets.UTF_8), true);
  }

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }

  /** The version that the jar's manifest states. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      String stated = Main.class.getPackage().getImplementationVersion();
      return new String[] {
        "chillwright " + Optional.ofNullable(stated).orElse("(run from its classes, no version)")
      };
    }
  }
}
