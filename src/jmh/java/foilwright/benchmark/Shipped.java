package foilwright.benchmark;

import foilwright.document.Documents;
import foilwright.document.GuestDocument;
import foilwright.document.HouseDocument;
import foilwright.head.Head;
import foilwright.pattern.Pattern;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** What ships with the program and is measured here: a guest, a house and the patterns. */
final class Shipped {
  private Shipped() {}

  static GuestDocument guest() {
    return Documents.readGuest(bytes("guests/guest-07")).value().orElseThrow();
  }

  static HouseDocument house() {
    return Documents.readHouse(bytes("house/practice-room")).value().orElseThrow();
  }

  static Pattern pattern(String name) {
    return Documents.readPattern(bytes("patterns/" + name)).value().orElseThrow();
  }

  /** The guest's head; its scalp is a mesh of about 20 thousand triangles. */
  static Head head() {
    return guest().fitHead(house().head()).head().orElseThrow();
  }

  private static byte[] bytes(String name) {
    String resource = "/foilwright/library/" + name + ".json";
    try (InputStream in = Shipped.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException(resource + " does not ship");
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(resource, e);
    }
  }
}
