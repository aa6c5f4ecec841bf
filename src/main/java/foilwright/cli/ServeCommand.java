package foilwright.cli;

import foilwright.app.Workspace;
import foilwright.web.PageServer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code serve}: the page, on this machine alone, until it is stopped. */
final class ServeCommand implements Command {
  private static final int USUAL_PORT = 8460;

  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create().name("serve");
    spec.usageMessage()
        .description(
            "Shows plans on a page in this machine's browser, to look at and to change. Stop it"
                + " with Ctrl-C.");
    spec.addOption(
        Options.text("--port", "N", "Where it listens; else " + USUAL_PORT + "; 0 for any free."));
    spec.addOption(Options.flag("--open", "Open the page in the browser."));
    spec.addOption(
        Options.text("--workspace", "DIR", "The folder of your own documents; else this one."));
    return spec;
  }

  @Override
  public int run(ParseResult options, Terminal terminal) throws IOException {
    int port = Options.find(options, "--port").map(ServeCommand::port).orElse(USUAL_PORT);
    Path folder =
        Options.find(options, "--workspace")
            .map(terminal.folder()::resolve)
            .orElse(terminal.folder());
    if (!Files.isDirectory(folder)) {
      throw new UsageException(
          "--workspace: there is no folder \"" + folder + "\"; make it first, or name another");
    }
    PageServer server;
    try {
      server =
          PageServer.start(Workspace.in(folder), () -> LocalDate.now(ZoneId.systemDefault()), port);
    } catch (PageServer.PortTakenException e) {
      throw new UsageException(
          "--port: " + port + " is taken by another program; choose another, or 0 for any free");
    }
    CountDownLatch stopped = new CountDownLatch(1);
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  server.stop();
                  stopped.countDown();
                }));
    terminal.out().println("The page is at " + server.address() + " ; stop it with Ctrl-C.");
    terminal.out().flush();
    if (options.hasMatchedOption("--open")) {
      open(server.address(), terminal);
    }
    try {
      stopped.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      server.stop();
    }
    return Exit.DONE;
  }

  private static int port(String text) {
    if (text.matches("\\d{1,5}") && Integer.parseInt(text) <= 65_535) {
      return Integer.parseInt(text);
    }
    throw new UsageException("--port: \"" + text + "\" is not a port; write 0 to 65535");
  }

  private static void open(String address, Terminal terminal) {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    List<String> command =
        system.contains("win")
            ? List.of("rundll32", "url.dll,FileProtocolHandler", address)
            : List.of(system.contains("mac") ? "open" : "xdg-open", address);
    try {
      new ProcessBuilder(command)
          .redirectErrorStream(true)
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .start();
    } catch (IOException e) {
      terminal.err().println("No browser could be opened; open " + address + " yourself.");
    }
  }
}
