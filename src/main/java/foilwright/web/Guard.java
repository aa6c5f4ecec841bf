package foilwright.web;

import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import io.javalin.http.HandlerType;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Set;

/**
 * Lets through what this machine's own pages ask and nothing else: the right host name, no other
 * site's form, a token with every change; and tells the browser to run nothing that did not come
 * from here.
 */
final class Guard {
  private static final Set<String> NAMES = Set.of("localhost", "127.0.0.1", "[::1]");
  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self';"
          + " connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

  private final String token = token();

  private static String token() {
    byte[] bytes = new byte[24];
    new SecureRandom().nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  /** What every change must bring with it. */
  String changeToken() {
    return token;
  }

  void check(Context context) {
    context
        .header("Content-Security-Policy", POLICY)
        .header("X-Content-Type-Options", "nosniff")
        .header("X-Frame-Options", "DENY")
        .header("Referrer-Policy", "no-referrer")
        .header("Cross-Origin-Opener-Policy", "same-origin")
        .header("Cross-Origin-Resource-Policy", "same-origin")
        .header("Permissions-Policy", "camera=(), geolocation=(), microphone=()")
        .header("Cache-Control", "no-store");
    String host = context.header("Host");
    if (host == null || !NAMES.contains(name(host))) {
      throw new ForbiddenResponse("This page answers to its own machine only.");
    }
    String origin = context.header("Origin");
    if (origin != null && !origin.equals("http://" + host)) {
      throw new ForbiddenResponse("Another site may not ask this page for anything.");
    }
    HandlerType method = context.method();
    if (!method.equals(HandlerType.GET)
        && !method.equals(HandlerType.HEAD)
        && !sameToken(context)) {
      throw new ForbiddenResponse(
          "The page is older than the program that runs. Load it again; nothing was changed.");
    }
  }

  private boolean sameToken(Context context) {
    String sent = context.formParam("token");
    return sent != null
        && MessageDigest.isEqual(
            sent.getBytes(StandardCharsets.UTF_8), token.getBytes(StandardCharsets.UTF_8));
  }

  private static String name(String host) {
    int colon = host.lastIndexOf(':');
    boolean hasPort = colon > host.lastIndexOf(']');
    return (hasPort ? host.substring(0, colon) : host).toLowerCase(Locale.ROOT);
  }
}
