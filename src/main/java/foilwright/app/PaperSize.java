package foilwright.app;

import foilwright.sheet.Paper;
import java.util.Arrays;
import java.util.Optional;

/** The papers that sheets are made for. */
public enum PaperSize {
  A4("a4"),
  LETTER("letter");

  private final String words;

  PaperSize(String words) {
    this.words = words;
  }

  /** The word on the command line. */
  public String words() {
    return words;
  }

  Paper paper() {
    return switch (this) {
      case A4 -> Paper.A4;
      case LETTER -> Paper.LETTER;
    };
  }

  /** The size of that name, in small letters or capitals. */
  public static Optional<PaperSize> find(String word) {
    return Arrays.stream(values()).filter(size -> size.words.equalsIgnoreCase(word)).findFirst();
  }
}
