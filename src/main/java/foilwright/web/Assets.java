package foilwright.web;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.zip.CRC32;

/** The few files that a page fetches, each by its own name and no other. */
final class Assets {
  private static final String HTMX = "/META-INF/resources/webjars/htmx.org/2.0.4/dist/";
  private static final String THREE = "/META-INF/resources/webjars/three/0.181.1/build/";
  private static final String OWN = "/foilwright/web/";
  private static final String SCRIPT = "text/javascript; charset=utf-8";

  /**
   * A file and what it is.
   *
   * @param resource where it lies in the program
   */
  private record Asset(String resource, String type) {}

  private static final Map<String, Asset> BY_NAME =
      Map.of(
          "page.css", new Asset(OWN + "page.css", "text/css; charset=utf-8"),
          "page.js", new Asset(OWN + "page.js", SCRIPT),
          "head.js", new Asset(OWN + "head.js", SCRIPT),
          "three.module.min.js", new Asset(THREE + "three.module.min.js", SCRIPT),
          "three.core.min.js", new Asset(THREE + "three.core.min.js", SCRIPT),
          "icon.svg", new Asset(OWN + "icon.svg", "image/svg+xml; charset=utf-8"),
          "htmx.min.js", new Asset(HTMX + "htmx.min.js", SCRIPT),
          "letters.ttf", new Asset("/foilwright/drawing/font/DejaVuSans.ttf", "font/ttf"));

  private final Map<String, byte[]> read = new ConcurrentHashMap<>();

  void send(Context context) {
    Asset asset = BY_NAME.get(context.pathParam("name"));
    if (asset == null) {
      throw new NotFoundResponse("There is no such file.");
    }
    byte[] bytes = read.computeIfAbsent(asset.resource(), Assets::load);
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
