package foilwright.app;

import java.util.Arrays;
import java.util.Optional;

/** The kinds of file that a sheet becomes. */
public enum SheetFormat {
  SVG("svg"),
  PNG("png"),
  PDF("pdf");

  private final String words;

  SheetFormat(String words) {
    this.words = words;
  }

  /** The word on the command line; a file's name ends with it. */
  public String words() {
    return words;
  }

  /** The format of that name. */
  public static Optional<SheetFormat> find(String word) {
    return Arrays.stream(values()).filter(f -> f.words.equalsIgnoreCase(word)).findFirst();
  }
}
