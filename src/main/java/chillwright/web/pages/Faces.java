package chillwright.web.pages;

import io.javalin.http.Context;
import io.javalin.http.Header;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * A file that pages ask for. Its address changes with what is in it, so a browser keeps it for
 * good.
 */
enum Faces {
  CSS("kitchen.css", "text/css; charset=utf-8"),
  SCRIPT("kitchen.js", "text/javascript; charset=utf-8"),

  /** Asked for by a plain address: browsers compare it with the one they have. */
  WORKER("worker.js", "text/javascript; charset=utf-8");

  /** A worker obeys the policy it comes with. */
  private static final String POLICY =
      "default-src 'none'; connect-src 'self'; frame-ancestors 'none'";

  private static final int SHORT = 12;

  private final String name;
  private final String type;
  private final byte[] bytes;
  private final String address;

  Faces(String name, String type) {
    this.name = name;
    this.type = type;
    this.bytes = read(name);
    this.address = "/" + name + "?v=" + hash(bytes);
  }

  private static byte[] read(String name) {
    try (InputStream file = Faces.class.getResourceAsStream("/face/" + name)) {
      return file.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String hash(byte[] bytes) {
    try {
      byte[] hash = MessageDigest.getInstance("SHA-256").digest(bytes);
      return HexFormat.of().formatHex(hash).substring(0, SHORT);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  String path() {
    return "/" + name;
  }

  String address() {
    return address;
  }

  void answer(Context context) {
    if (this == WORKER) {
      context.header(Header.CACHE_CONTROL, "no-cache");
      context.header("Content-Security-Policy", POLICY);
    } else {
      context.header(Header.CACHE_CONTROL, "private, max-age=31536000, immutable");
    }
    context.contentType(type).result(bytes);
  }
}
