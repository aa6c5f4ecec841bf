package foilwright.cli;

import foilwright.app.LookRequest;
import foilwright.app.PlanRequest;
import foilwright.fall.FallSettings;
import foilwright.fall.HairStyle;
import foilwright.look.Tone;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** The options of commands that look at hair. */
final class LookOptions {
  private static final int LEAST_SIZE = 100;
  private static final int MOST_SIZE = 1200;

  private LookOptions() {}

  static List<OptionSpec> all() {
    return List.of(
        Options.text("--guest", "GUEST", "Whose head and hair: a guest's number, or a file."),
        Options.text("--house", "HOUSE", "Paces, products and foils: a name or file."),
        Options.text("--pace", "NAME", "One of the house's paces; else its first."),
        Options.part(),
        Options.text(
            "--style",
            "STYLE",
            "How the hair is worn: "
                + words(HairStyle.values(), HairStyle::words)
                + "; else natural."),
        Options.text(
            "--months", "NUMBER", "Months of growth for the later pictures, 0 to 12; else 3."),
        Options.text("--tone", "TONE", "Of the lightened hair: cool, neutral or warm."),
        Options.text(
            "--hairs",
            "NUMBER",
            "How many hairs to follow, "
                + FallSettings.LEAST_HAIRS
                + " to "
                + FallSettings.MOST_HAIRS
                + "; else "
                + FallSettings.USUAL_HAIRS
                + "."),
        Options.text("--size", "PIXELS", "Height of a picture, 100 to 1200; else 400."),
        Options.out(),
        Options.flag("--png", "Draw the sheet as a picture (PNG) too."),
        Options.flag("--json", "Print the figures as JSON."));
  }

  static LookRequest request(String pattern, ParseResult options) {
    PlanRequest plan = PlanRequest.of(pattern);
    plan = Options.find(options, "--guest").map(plan::withGuest).orElse(plan);
    plan = Options.find(options, "--house").map(plan::withHouse).orElse(plan);
    plan = Options.find(options, "--pace").map(plan::withPace).orElse(plan);
    plan = Options.findPart(options).map(plan::withPart).orElse(plan);
    LookRequest request = LookRequest.of(plan);
    if (Options.find(options, "--style").isPresent()) {
      request = request.withStyle(word(options, "--style", HairStyle.values(), HairStyle::words));
    }
    if (Options.find(options, "--tone").isPresent()) {
      request = request.withTone(word(options, "--tone", Tone.values(), Tone::words));
    }
    if (Options.find(options, "--months").isPresent()) {
      request = request.withMonths(number(options, "--months", 0, LookRequest.MOST_MONTHS, false));
    }
    if (Options.find(options, "--hairs").isPresent()) {
      request =
          request.withHairs(
              (int)
                  number(
                      options, "--hairs", FallSettings.LEAST_HAIRS, FallSettings.MOST_HAIRS, true));
    }
    if (Options.find(options, "--size").isPresent()) {
      request = request.withHeight((int) number(options, "--size", LEAST_SIZE, MOST_SIZE, true));
    }
    return request;
  }

  private static <E> String words(E[] values, Function<E, String> words) {
    return Arrays.stream(values).map(words).collect(Collectors.joining(", "));
  }

  private static <E> E word(
      ParseResult options, String name, E[] values, Function<E, String> words) {
    String text = Options.find(options, name).orElseThrow().strip().replace('-', ' ');
    return Arrays.stream(values)
        .filter(value -> words.apply(value).equals(text))
        .findFirst()
        .orElseThrow(
            () ->
                new UsageException(
                    "\""
                        + text
                        + "\" is not known; write "
                        + name
                        + " with one of: "
                        + words(values, words)));
  }

  private static double number(
      ParseResult options, String name, double least, double most, boolean whole) {
    String text = Options.find(options, name).orElseThrow().strip();
    double value;
    try {
      value = whole ? Integer.parseInt(text) : Double.parseDouble(text);
    } catch (NumberFormatException e) {
      throw new UsageException(
          name + ": \"" + text + "\" is not a " + (whole ? "whole " : "") + "number");
    }
    if (!(value >= least && value <= most)) {
      throw new UsageException(
          String.format(Locale.ROOT, "%s: %s is outside %.0f to %.0f", name, text, least, most));
    }
    return value;
  }
}
