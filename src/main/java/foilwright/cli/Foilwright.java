package foilwright.cli;

/** Entry point of the program. */
public final class Foilwright {
  private Foilwright() {}

  public static void main(String[] args) {
    System.out.println("foilwright 0.1.0");
  }
}
