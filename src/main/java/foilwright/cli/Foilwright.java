package foilwright.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** Entry point of the program. */
public final class Foilwright {
  static final String VERSION = "foilwright 0.1.0";

  private Foilwright() {}

  public static void main(String[] args) {
    PrintStream out = stream(FileDescriptor.out);
    PrintStream err = stream(FileDescriptor.err);
    int code =
        run(args, new Terminal(out, err, Path.of(""), LocalDate.now(ZoneId.systemDefault())));
    if (out.checkError() && code == Exit.DONE) {
      err.println("The result could not be written to standard output.");
      code = Exit.FAILURE;
    }
    err.flush();
    System.exit(code);
  }

  private static PrintStream stream(FileDescriptor descriptor) {
    OutputStream file = new FileOutputStream(descriptor);
    return new PrintStream(file, false, StandardCharsets.UTF_8);
  }

  /** Runs one command line; no exception leaves. */
  static int run(String[] args, Terminal terminal) {
    try {
      return execute(args, terminal);
    } catch (UsageException e) {
      terminal.err().println(e.getMessage());
      return Exit.USAGE;
    } catch (UncheckedIOException e) {
      terminal.err().println(e.getMessage() + ": " + reason(e.getCause()));
      return Exit.FAILURE;
    } catch (IOException e) {
      terminal.err().println(reason(e));
      return Exit.FAILURE;
    } catch (OutOfMemoryError e) {
      terminal.err().println("The program ran out of memory. Give it more, such as java -Xmx1g.");
      return Exit.FAILURE;
    } catch (RuntimeException | StackOverflowError | AssertionError | LinkageError e) {
      terminal
          .err()
          .println(
              "The program failed: "
                  + e
                  + ". This is a fault of the program, not of your documents.");
      return Exit.FAILURE;
    }
  }

  private static int execute(String[] args, Terminal terminal) throws IOException {
    Map<String, Command> commands = new LinkedHashMap<>();
    for (Command command :
        List.of(
            new PlanCommand(),
            new TimeCommand(),
            new MixCommand(),
            new DrawCommand(),
            new MarkCommand(),
            new LookCommand(),
            new CompareCommand(),
            new HeadCommand(),
            new CheckCommand(),
            new PatternsCommand(),
            new CalibrateCommand(),
            new ServeCommand())) {
      commands.put(command.spec().name(), command);
    }
    CommandSpec root =
        CommandSpec.create()
            .name("foilwright")
            .addOption(help())
            .addOption(
                OptionSpec.builder("-V", "--version")
                    .versionHelp(true)
                    .description("Print the version and stop.")
                    .build());
    root.version(VERSION);
    root.usageMessage()
        .description("Plans foil highlights on a measured head before the client sits down.")
        .footer(
            "",
            "foilwright COMMAND --help tells more. Exit codes: 0 done, 1 a document has problems,"
                + " 2 the command was not understood, 3 a file or the program failed.");
    for (Command command : commands.values()) {
      CommandSpec spec = command.spec();
      spec.addOption(help());
      root.addSubcommand(spec.name(), new CommandLine(spec));
    }
    CommandLine line =
        new CommandLine(root)
            .setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF))
            .setOut(new PrintWriter(terminal.out(), true, StandardCharsets.UTF_8));
    try {
      ParseResult parsed = line.parseArgs(args);
      if (CommandLine.executeHelpRequest(parsed) != null) {
        return Exit.DONE;
      }
      if (!parsed.hasSubcommand()) {
        terminal.err().println("Name a command: " + String.join(", ", commands.keySet()) + ".");
        line.usage(terminal.err());
        return Exit.USAGE;
      }
      ParseResult options = parsed.subcommand();
      return commands.get(options.commandSpec().name()).run(options, terminal);
    } catch (ParameterException e) {
      terminal.err().println(words(e));
      UnmatchedArgumentException.printSuggestions(e, terminal.err());
      terminal
          .err()
          .println("Try " + e.getCommandLine().getCommandSpec().qualifiedName() + " --help.");
      return Exit.USAGE;
    }
  }

  private static String words(ParameterException e) {
    if (e instanceof UnmatchedArgumentException u && !u.isUnknownOption()) {
      String first = u.getUnmatched().get(0);
      return e.getCommandLine().getParent() == null
          ? "\"" + first + "\" is not a command."
          : "\""
              + first
              + "\" is not expected here; an option such as --out stands before its value.";
    }
    return e.getMessage();
  }

  private static OptionSpec help() {
    return OptionSpec.builder("-h", "--help")
        .usageHelp(true)
        .description("Print this help and stop.")
        .build();
  }

  private static String reason(IOException e) {
    String file = e instanceof FileSystemException f && f.getFile() != null ? f.getFile() : "";
    if (e instanceof AccessDeniedException) {
      return "\"" + file + "\" may not be written or read here; choose another folder or file";
    }
    if (e instanceof FileAlreadyExistsException) {
      return "\"" + file + "\" is a file, not a folder; choose another name";
    }
    if (e instanceof FileSystemException f) {
      return "\""
          + file
          + "\" cannot be written or read"
          + (f.getReason() == null ? "" : " (" + f.getReason() + ")")
          + "; choose another folder or file";
    }
    return String.valueOf(e.getMessage());
  }
}
