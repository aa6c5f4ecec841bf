package foilwright.cli;

import foilwright.app.Calibration;
import foilwright.app.CalibrationOutcome;
import foilwright.app.FoilTimes;
import foilwright.app.Measured;
import foilwright.app.PlanRequest;
import foilwright.app.Workspace;
import foilwright.pattern.MixSlot;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code calibrate PATTERN}: scale and watch after a visit bring the house nearer to the truth. */
final class CalibrateCommand implements Command {
  private static final String WEIGH_BACK = "weigh-back";
  private static final String TIMING = "timing";
  private static final String SLOTS =
      Arrays.stream(MixSlot.values()).map(MixSlot::name).collect(Collectors.joining(", "));
  private static final Pattern WEIGHT = Pattern.compile("(\\p{L})\\s+(.+)");
  private static final Pattern UNDO = Pattern.compile("(\\S+)(?:\\s+(\\S+))?");
  private static final int LARGEST_FILE = 100_000;

  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create().name("calibrate");
    spec.usageMessage()
        .description(
            "Takes grams left over and minutes by the watch into the house, for the next plan.");
    spec.addPositional(
        PositionalParamSpec.builder()
            .index("0")
            .required(true)
            .paramLabel("PATTERN")
            .type(String.class)
            .description("The pattern that was worked: its name, or its file.")
            .build());
    spec.addOption(Options.text("--guest", "GUEST", "On whom: a guest's number, or a file."));
    spec.addOption(Options.text("--house", "HOUSE", "The house to change: a name or file."));
    spec.addOption(
        Options.text(
            "--pace", "NAME", "The pace of who placed the foils; else the house's first."));
    spec.addOption(Options.part());
    spec.addOption(
        weights("--left", "Grams left over of a mix, such as --left \"A 9 g\"; again for others."));
    spec.addOption(
        weights("--mixed", "Grams mixed in all its bowls, such as \"A 84 g\"; else as planned."));
    spec.addOption(
        Options.text(
            "--took", "TIME", "All placing, from the first parting to the last foil: 38min."));
    spec.addOption(
        Options.text(
            "--minutes",
            "TIMES",
            "The first foils in working order, one by one: \"1.1, 1.3, 0.9 min\"."));
    spec.addOption(
        Options.text(
            "--minutes-file", "FILE", "The same from a file, one in a line, the unit once."));
    spec.addOption(
        Options.text("--date", "DATE", "Day of the visit, such as 2026-12-01; else today."));
    spec.addOption(
        Options.text(
            "--undo",
            "WHAT",
            "Take the newest entry away again: "
                + WEIGH_BACK
                + ", \""
                + WEIGH_BACK
                + " A\" or "
                + TIMING
                + "."));
    return spec;
  }

  private static OptionSpec weights(String name, String help) {
    return OptionSpec.builder(name)
        .paramLabel("\"SLOT GRAMS\"")
        .arity("1")
        .type(List.class)
        .auxiliaryTypes(String.class)
        .description(help)
        .build();
  }

  @Override
  public int run(ParseResult options, Terminal terminal) throws IOException {
    Optional<String> undo = Options.find(options, "--undo");
    Optional<Measured> measured = measured(options, terminal);
    if (undo.isPresent() == measured.isPresent()) {
      throw new UsageException(
          undo.isPresent()
              ? "--undo stands alone; measure again in a second command."
              : "There is nothing to calibrate with; give --left, --took, --minutes or"
                  + " --minutes-file, or --undo.");
    }
    if (measured.isPresent() && !options.hasMatchedOption("--guest")) {
      throw new UsageException(
          "Name the guest with --guest: what was weighed and timed belongs to one head of hair.");
    }
    Workspace workspace = Workspace.in(terminal.folder());
    PlanRequest request = request(options);
    try (Progress progress = Progress.start(terminal.err())) {
      CalibrationOutcome outcome =
          measured.isPresent()
              ? Calibration.calibrate(workspace, request, measured.get(), progress)
              : undo(workspace, request, undo.get(), progress);
      if (outcome.calibrated().isEmpty()) {
        Problems.print(outcome.problems(), terminal.err());
        return outcome.unreachable() ? Exit.FAILURE : Exit.PROBLEMS;
      }
      CalibrationText.print(outcome.calibrated().get(), new Measures(false), terminal.out());
      return Exit.DONE;
    }
  }

  private static PlanRequest request(ParseResult options) {
    PlanRequest request = PlanRequest.of(options.matchedPositionalValue(0, ""));
    request = Options.find(options, "--guest").map(request::withGuest).orElse(request);
    request = Options.find(options, "--house").map(request::withHouse).orElse(request);
    request = Options.find(options, "--pace").map(request::withPace).orElse(request);
    return Options.findPart(options).map(request::withPart).orElse(request);
  }

  private static CalibrationOutcome undo(
      Workspace workspace, PlanRequest request, String what, Progress progress) throws IOException {
    Matcher words = UNDO.matcher(what.strip());
    if (words.matches() && words.group(1).equals(TIMING) && words.group(2) == null) {
      return Calibration.undoTiming(workspace, request, progress);
    }
    if (words.matches() && words.group(1).equals(WEIGH_BACK)) {
      return Calibration.undoWeighBack(
          workspace,
          request,
          Optional.ofNullable(words.group(2)).map(letter -> slot("--undo", letter)),
          progress);
    }
    throw new UsageException(
        "--undo: \""
            + what
            + "\" is not one of "
            + WEIGH_BACK
            + ", \""
            + WEIGH_BACK
            + " A\", "
            + TIMING);
  }

  private static Optional<Measured> measured(ParseResult options, Terminal terminal)
      throws IOException {
    Map<MixSlot, Mass> left = weights(options, "--left");
    Map<MixSlot, Mass> mixed = weights(options, "--mixed");
    Optional<Minutes> took = Options.find(options, "--took").map(CalibrateCommand::took);
    List<Minutes> foils = foilTimes(options, terminal);
    LocalDate date =
        Options.find(options, "--date").map(CalibrateCommand::date).orElse(terminal.today());
    if (left.isEmpty() && mixed.isEmpty() && took.isEmpty() && foils.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(new Measured(mixed, left, took, foils, Optional.of(date)));
    } catch (IllegalArgumentException e) {
      throw new UsageException("It cannot be as measured: " + e.getMessage() + ".");
    }
  }

  private static Map<MixSlot, Mass> weights(ParseResult options, String name) {
    List<String> given = options.matchedOptionValue(name, List.<String>of());
    Map<MixSlot, Mass> weights = new EnumMap<>(MixSlot.class);
    if (given.isEmpty()) {
      return weights;
    }
    for (String part : String.join(",", given).split(",", -1)) {
      Matcher weight = WEIGHT.matcher(part.strip());
      if (!weight.matches()) {
        throw new UsageException(
            name
                + ": \""
                + part.strip()
                + "\" is not a slot and a weight; write for example "
                + name
                + " \"A 9.5 g\"");
      }
      MixSlot slot = slot(name, weight.group(1));
      if (weights.put(slot, mass(name, weight.group(2))) != null) {
        throw new UsageException(name + ": " + slot + " comes twice; add up all its bowls");
      }
    }
    return weights;
  }

  private static MixSlot slot(String name, String letter) {
    return Arrays.stream(MixSlot.values())
        .filter(slot -> slot.name().equals(letter.toUpperCase(Locale.ROOT)))
        .findFirst()
        .orElseThrow(
            () ->
                new UsageException(
                    name + ": \"" + letter + "\" is not a mix slot; use one of " + SLOTS));
  }

  private static Mass mass(String name, String text) {
    try {
      return Mass.parse(text);
    } catch (IllegalArgumentException e) {
      throw new UsageException(name + ": " + e.getMessage());
    }
  }

  private static Minutes took(String text) {
    try {
      return Minutes.parse(text);
    } catch (IllegalArgumentException e) {
      throw new UsageException("--took: " + e.getMessage());
    }
  }

  private static LocalDate date(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw new UsageException(
          "--date: \"" + text + "\" is not a date; write year-month-day, such as 2026-12-01");
    }
  }

  private static List<Minutes> foilTimes(ParseResult options, Terminal terminal)
      throws IOException {
    Optional<String> typed = Options.find(options, "--minutes");
    Optional<String> file = Options.find(options, "--minutes-file");
    if (typed.isPresent() && file.isPresent()) {
      throw new UsageException("Choose one of --minutes and --minutes-file.");
    }
    if (typed.isEmpty() && file.isEmpty()) {
      return List.of();
    }
    String text = typed.isPresent() ? typed.get() : read(file.get(), terminal.folder());
    try {
      return FoilTimes.parse(text);
    } catch (IllegalArgumentException e) {
      throw new UsageException(
          (typed.isPresent() ? "--minutes: " : "--minutes-file " + file.get() + ": ")
              + e.getMessage());
    }
  }

  private static String read(String file, Path folder) throws IOException {
    Path path;
    try {
      path = folder.resolve(file);
    } catch (InvalidPathException e) {
      throw new UsageException("--minutes-file: no file can be called \"" + file + "\"");
    }
    if (!Files.isRegularFile(path)) {
      throw new UsageException("--minutes-file: there is no file \"" + file + "\"");
    }
    try (InputStream in = Files.newInputStream(path)) {
      byte[] bytes = in.readNBytes(LARGEST_FILE + 1);
      if (bytes.length > LARGEST_FILE) {
        throw new UsageException(
            "--minutes-file: \"" + file + "\" is too long for the times of one visit");
      }
      return new String(bytes, StandardCharsets.UTF_8);
    }
  }
}
