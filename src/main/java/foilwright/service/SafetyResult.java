package foilwright.service;

/**
 * What an answer on file comes to, when the house said so; {@link SafetyQuestion} has the words.
 */
public enum SafetyResult {
  /** Nothing was found that speaks against going on. It clears nobody. */
  CLEAR,
  /** Do not go on. */
  STOP,
  /** Not asked or tested; as good as no answer. */
  NOT_DONE
}
