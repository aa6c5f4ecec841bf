package foilwright.web;

import static java.util.Map.entry;

import foilwright.app.PageDrawings;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import java.util.zip.CRC32;

/** The few files that a page fetches, each by its own name and no other. */
final class Assets {
  private static final String HTMX = "/META-INF/resources/webjars/htmx.org/2.0.4/dist/";
  private static final String THREE = "/META-INF/resources/webjars/three/0.181.1/build/";
  private static final String OWN = "/foilwright/web/";
  private static final String LETTERS = "/foilwright/drawing/font/DejaVuSans.ttf";
  private static final String FONT = "font/ttf";
  private static final String SCRIPT = "text/javascript; charset=utf-8";

  /**
   * A file and what it is.
   *
   * @param bytes reads or makes it
   */
  private record Asset(Supplier<byte[]> bytes, String type) {}

  private static final Map<String, Asset> BY_NAME =
      Map.ofEntries(
          own("page.css"),
          own("page.js"),
          own("head.js"),
          own("handles.js"),
          own("handles.css"),
          own("look.css"),
          own("look.js"),
          own("sheets.css"),
          own("sheets.js"),
          own("icon.svg"),
          file(THREE, "three.module.min.js", SCRIPT),
          file(THREE, "three.core.min.js", SCRIPT),
          file(HTMX, "htmx.min.js", SCRIPT),
          // The usual letters at once; the others only for a page that has them.
          entry("letters.ttf", new Asset(PageDrawings::letters, FONT)),
          entry("more-letters.ttf", new Asset(() -> load(LETTERS), FONT)));

  private static Map.Entry<String, Asset> own(String name) {
    String type =
        name.endsWith(".js")
            ? SCRIPT
            : name.endsWith(".css") ? "text/css; charset=utf-8" : "image/svg+xml; charset=utf-8";
    return file(OWN, name, type);
  }

  private static Map.Entry<String, Asset> file(String folder, String name, String type) {
    return entry(name, new Asset(() -> load(folder + name), type));
  }

  private final Map<String, byte[]> read = new ConcurrentHashMap<>();

  void send(Context context) {
    String name = context.pathParam("name");
    Asset asset = BY_NAME.get(name);
    if (asset == null) {
      throw new NotFoundResponse("There is no such file.");
    }
    byte[] bytes = read.computeIfAbsent(name, n -> asset.bytes().get());
    CRC32 sum = new CRC32();
    sum.update(bytes);
    String tag = "\"" + Long.toHexString(sum.getValue()) + "\"";
    context.header("Cache-Control", "no-cache").header("ETag", tag);
    if (tag.equals(context.header("If-None-Match"))) {
      context.status(304);
    } else {
      context.contentType(asset.type()).result(bytes);
    }
  }

  private static byte[] load(String resource) {
    try (InputStream in = Assets.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its file " + resource);
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException("the program's file " + resource + " cannot be read", e);
    }
  }
}
