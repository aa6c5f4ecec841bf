package foilwright.app;

import java.util.Arrays;
import java.util.Optional;

/** The sheets that can be drawn of a plan, in the order of the book. */
public enum SheetKind {
  MAP("map"),
  STEPS("steps"),
  ANGLES("angles"),
  BLANK("blank"),
  ANSWER("answer"),
  MARKING("marking"),
  TIMELINE("timeline"),
  MIX("mix"),
  LOOK("look"),
  WRAP("wrap"),
  CLIENT("client"),
  RECORD("record");

  private final String words;

  SheetKind(String words) {
    this.words = words;
  }

  /** The word on the command line and in file names. */
  public String words() {
    return words;
  }

  /** The sheet of that name. */
  public static Optional<SheetKind> find(String word) {
    return Arrays.stream(values()).filter(kind -> kind.words.equals(word)).findFirst();
  }
}
