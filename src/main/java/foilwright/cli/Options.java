package foilwright.cli;

import foilwright.anatomy.PartSide;
import foilwright.app.OutputFolder;
import foilwright.app.PaperSize;
import foilwright.app.PartWish;
import foilwright.app.PatternFiles;
import foilwright.app.SheetFile;
import foilwright.app.SheetFormat;
import foilwright.head.Tape;
import foilwright.pattern.Pattern;
import foilwright.units.Length;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** Options that several commands take, and their values. */
final class Options {
  private Options() {}

  static OptionSpec text(String name, String label, String help) {
    return OptionSpec.builder(name)
        .paramLabel(label)
        .arity("1")
        .type(String.class)
        .description(help)
        .build();
  }

  static OptionSpec flag(String name, String help) {
    return OptionSpec.builder(name).arity("0").type(boolean.class).description(help).build();
  }

  /** An option that may be given again and again. */
  static OptionSpec texts(String name, String label, String help) {
    return OptionSpec.builder(name)
        .paramLabel(label)
        .arity("1")
        .type(List.class)
        .auxiliaryTypes(String.class)
        .description(help)
        .build();
  }

  static List<String> all(ParseResult options, String name) {
    return options.matchedOptionValue(name, List.of());
  }

  static OptionSpec paper() {
    return text("--paper", "SIZE", "The paper: a4 or letter; else a4.");
  }

  static Optional<PaperSize> findPaper(ParseResult options) {
    return find(options, "--paper")
        .map(
            word ->
                PaperSize.find(word)
                    .orElseThrow(
                        () ->
                            new UsageException(
                                "\""
                                    + word
                                    + "\" is not a paper; write --paper a4 or --paper letter")));
  }

  static OptionSpec format() {
    return text("--format", "FORMAT", "The kind of file: svg, png or pdf; else svg.");
  }

  static Optional<SheetFormat> findFormat(ParseResult options) {
    return find(options, "--format")
        .map(
            word ->
                SheetFormat.find(word)
                    .orElseThrow(
                        () ->
                            new UsageException(
                                "\""
                                    + word
                                    + "\" is not a format; write --format svg, png or pdf")));
  }

  static OptionSpec grey() {
    return flag("--grey", "Draw without colour.");
  }

  static OptionSpec part() {
    return text("--part", "SIDE", "The part: left, centre, right or none; else the guest's own.");
  }

  static OptionSpec out() {
    return text("--out", "FOLDER", "Where drawings go; else output.");
  }

  static OptionSpec inches() {
    return flag("--inches", "Tell lengths in inches too.");
  }

  static Optional<String> find(ParseResult options, String name) {
    return Optional.ofNullable(options.matchedOptionValue(name, null));
  }

  /** What a tape read, such as {@code 56cm}. */
  static Optional<Length> findTape(ParseResult options, String name, Tape tape) {
    return find(options, name).map(text -> reading(name, text, tape));
  }

  private static Length reading(String name, String text, Tape tape) {
    Length length;
    try {
      length = Length.parse(text);
    } catch (IllegalArgumentException e) {
      throw new UsageException(
          name + ": " + e.getMessage() + "; for example " + name + " \"56 cm\"");
    }
    if (length.compareTo(tape.least()) < 0 || length.compareTo(tape.most()) > 0) {
      throw new UsageException(
          name + ": " + length + " is outside " + tape.least() + " to " + tape.most());
    }
    return length;
  }

  static Optional<PartWish> findPart(ParseResult options) {
    return find(options, "--part")
        .map(
            word ->
                Arrays.stream(PartSide.values())
                    .filter(side -> side.words().equals(word))
                    .findFirst()
                    .orElseThrow(
                        () ->
                            new UsageException(
                                "\""
                                    + word
                                    + "\" is not a part; write --part with one of: "
                                    + Arrays.stream(PartSide.values())
                                        .map(PartSide::words)
                                        .collect(Collectors.joining(", ")))))
        .map(PartWish::on);
  }

  /** The folder of {@code --out}, as it was named. */
  static Path outFolder(ParseResult options) {
    String text = find(options, "--out").orElse("output");
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw new UsageException("--out: no folder can be called \"" + text + "\"");
    }
  }

  /** Writes sheets into a folder and says where they lie. */
  static void write(List<SheetFile> sheets, Path named, Terminal terminal) throws IOException {
    OutputFolder folder = OutputFolder.open(terminal.folder().resolve(named));
    for (SheetFile sheet : sheets) {
      folder.write(sheet.name(), sheet.bytes());
      terminal.err().println("wrote " + named.resolve(sheet.name()));
    }
  }

  /** Writes one file where it was named and says so. */
  static void writeFile(String named, byte[] bytes, Terminal terminal) throws IOException {
    Path file = file(named, terminal);
    OutputFolder folder = OutputFolder.open(file.toAbsolutePath().getParent());
    folder.write(file.getFileName().toString(), bytes);
    terminal.err().println("wrote " + named);
  }

  /** Saves a pattern where it was named; what was there before is kept. */
  static void savePattern(String named, Pattern pattern, Terminal terminal) throws IOException {
    Optional<Path> kept = PatternFiles.save(file(named, terminal), pattern);
    terminal.err().println("wrote " + named);
    kept.ifPresent(old -> terminal.err().println("what was there is kept as " + old));
  }

  private static Path file(String named, Terminal terminal) {
    try {
      return terminal.folder().resolve(named);
    } catch (InvalidPathException e) {
      throw new UsageException("no file can be called \"" + named + "\"");
    }
  }
}
