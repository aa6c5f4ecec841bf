package foilwright.cli;

import foilwright.anatomy.Landmark;
import foilwright.anatomy.Zone;
import foilwright.app.HeadOutcome;
import foilwright.app.HeadRequest;
import foilwright.app.Heads;
import foilwright.app.Sheets;
import foilwright.app.Workspace;
import foilwright.geometry.Vector3;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.Tape;
import foilwright.head.TapeMeasurements;
import foilwright.units.Area;
import foilwright.units.Length;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code head}: the head that tapes describe, its areas and landmarks, told and drawn. */
final class HeadCommand implements Command {
  private static final String TRAINING_HEAD = "training-head";

  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create().name("head");
    spec.usageMessage()
        .description("Fits a head to tape measurements and tells its areas and landmarks.");
    spec.addOption(Options.text("--guest", "GUEST", "Whose head: a guest's number, or a file."));
    spec.addOption(
        Options.text(
            "--kind",
            "KIND",
            "The head that fills in what no tape measured: women, men, child or training-head."));
    spec.addOption(
        Options.text(
            "--around", "LENGTH", "Largest round, over the brow and the back, such as 56cm."));
    spec.addOption(
        Options.text("--over-top", "LENGTH", "Front hairline over the top to the nape hairline."));
    spec.addOption(Options.text("--ear-to-ear", "LENGTH", "From ear to ear over the top."));
    spec.addOption(
        Options.text("--front-hairline", "LENGTH", "From the brow line up to the hairline."));
    spec.addOption(
        Options.text(
            "--nape-depth", "LENGTH", "From the most prominent point down to the hairline."));
    spec.addOption(Options.part());
    spec.addOption(Options.out());
    spec.addOption(Options.flag("--png", "Draw the head as a picture (PNG) too."));
    spec.addOption(Options.inches());
    return spec;
  }

  @Override
  public int run(ParseResult options, Terminal terminal) throws IOException {
    HeadRequest request =
        new HeadRequest(
            Options.find(options, "--guest"),
            Options.find(options, "--kind").map(HeadCommand::kind),
            new TapeMeasurements(
                Options.findTape(options, "--around", Tape.AROUND),
                Options.findTape(options, "--over-top", Tape.FRONT_TO_BACK),
                Options.findTape(options, "--ear-to-ear", Tape.EAR_TO_EAR),
                Options.findTape(options, "--front-hairline", Tape.FRONT_HAIRLINE_HEIGHT),
                Options.findTape(options, "--nape-depth", Tape.NAPE_DEPTH)),
            Options.findPart(options));
    Path folder = Options.outFolder(options);
    try (Progress progress = Progress.start(terminal.err())) {
      HeadOutcome outcome = Heads.fit(Workspace.in(terminal.folder()), request, progress);
      if (outcome.head().isEmpty()) {
        Problems.print(outcome.problems(), terminal.err());
        return outcome.unreachable() ? Exit.FAILURE : Exit.PROBLEMS;
      }
      print(
          outcome.head().get(), new Measures(options.hasMatchedOption("--inches")), terminal.out());
      Problems.print(outcome.problems(), terminal.out());
      progress.accept("drawing the head");
      Options.write(
          Sheets.head(outcome.head().get(), outcome.name(), options.hasMatchedOption("--png")),
          folder,
          terminal);
      return outcome.hasErrors() ? Exit.PROBLEMS : Exit.DONE;
    }
  }

  private static HeadKind kind(String word) {
    return switch (word) {
      case "women", "woman" -> HeadKind.WOMAN;
      case "men", "man" -> HeadKind.MAN;
      case "child" -> HeadKind.CHILD;
      case TRAINING_HEAD -> HeadKind.TRAINING_HEAD;
      default ->
          throw new UsageException(
              "\""
                  + word
                  + "\" is not a kind of head; write --kind with one of: women, men, child, "
                  + TRAINING_HEAD);
    };
  }

  private static void print(Head head, Measures measures, PrintStream out) {
    out.println("Head, " + head.kind().words());
    out.println();
    Columns tapes = new Columns();
    for (Tape tape : Tape.values()) {
      boolean measured = tape.in(head.tapes()).isPresent();
      tapes.add(
          tape.words(), measures.whole(head.reading(tape)), measured ? "measured" : "assumed");
    }
    tapes.print("  ", out);

    double scalp = head.scalp().area();
    out.println();
    out.println("Zones");
    Columns zones = new Columns();
    for (Zone zone : Zone.values()) {
      double area = head.zone(zone).area();
      zones.add(
          zone.words(),
          measures.area(Area.ofSquareMillimetres(area)),
          measures.percent(area / scalp));
    }
    zones.add("scalp", measures.area(Area.ofSquareMillimetres(scalp)), measures.percent(1));
    zones.print("  ", out);

    out.println();
    out.println(
        "Landmarks: to the client's right, to the front and up from midway between the ears");
    Columns landmarks = new Columns();
    for (Landmark landmark : Landmark.values()) {
      Vector3 point = head.landmark(landmark);
      landmarks.add(
          landmark.words(), coordinate(point.x()), coordinate(point.y()), coordinate(point.z()));
    }
    landmarks.print("  ", out);

    out.println();
    Columns lines = new Columns();
    lines.add("hairline, all round", length(head.hairline().length(), measures));
    lines.add("centre line", length(head.centreLine().length(), measures));
    lines.add("ear line", length(head.earLine().length(), measures));
    head.partLine().ifPresent(line -> lines.add("part", length(line.length(), measures)));
    lines.add("flat of the apex, front to back", measures.whole(head.apexFlat()));
    lines.print("  ", out);
  }

  private static String coordinate(double mm) {
    return Length.ofMillimetres(mm).toString();
  }

  private static String length(double mm, Measures measures) {
    return measures.whole(Length.ofMillimetres(mm));
  }
}
