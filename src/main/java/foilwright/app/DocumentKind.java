package foilwright.app;

/** The kinds of documents and where they lie. */
public enum DocumentKind {
  PATTERN("pattern", "patterns", "patterns"),
  GUEST("guest", "shared/guests", "guests"),
  HOUSE("house", "shared/house", "house"),
  ATTEMPT("attempt", "attempts", "attempts");

  private final String words;
  private final String folder;
  private final String shelf;

  DocumentKind(String words, String folder, String shelf) {
    this.words = words;
    this.folder = folder;
    this.shelf = shelf;
  }

  /** The word for one document of this kind. */
  public String words() {
    return words;
  }

  /** The folder of a person's own documents, relative to the workspace, with forward slashes. */
  public String folder() {
    return folder;
  }

  /** The folder of the shipped documents inside the program. */
  String shelf() {
    return shelf;
  }
}
