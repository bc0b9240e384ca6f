package chillwright.web;

import chillwright.service.Kitchen;
import chillwright.service.KnownState;
import io.javalin.http.Context;
import io.javalin.http.Header;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Tells a client that polls whether its copy is still right, without making the answer anew. An
 * answer changes when something is written, when a limit passes, and with the minutes it counts.
 */
final class Freshness {
  private final KnownState known;
  private final LastAnswers answered = new LastAnswers();

  Freshness(Kitchen kitchen) {
    this.known = new KnownState(kitchen);
  }

  /**
   * Answers with JSON: that the client has it already, or what was answered to the same question a
   * moment ago, or else what is made now.
   */
  void answer(Context context, Supplier<Object> made) {
    String address = context.path() + "?" + context.queryString();
    String state = known.name();
    Optional<LastAnswers.Answered> before = answered.of(address, state);
    String tag = before.map(LastAnswers.Answered::tag).orElseGet(() -> tag(address, state));
    String kept = Optional.ofNullable(context.header(Header.IF_NONE_MATCH)).orElse("");
    if (matches(kept, tag)) {
      mark(context, tag).status(304);
      return;
    }
    byte[] bytes =
        before
            .map(LastAnswers.Answered::bytes)
            .orElseGet(() -> rendered(address, state, tag, made));
    mark(context, tag);
    if (kept.strip().equals("*")) {
      context.status(304);
    } else {
      Answer.json(context, bytes);
    }
  }

  private byte[] rendered(String address, String state, String tag, Supplier<Object> made) {
    byte[] bytes = Answer.bytes(made.get());
    answered.keep(address, state, tag, bytes);
    return bytes;
  }

  private static Context mark(Context context, String tag) {
    context.header(Header.ETAG, tag);
    context.header(Header.CACHE_CONTROL, "private, no-cache");
    return context.header(Header.VARY, "Authorization");
  }

  private static boolean matches(String header, String tag) {
    for (String known : header.split(",", -1)) {
      String plain = known.strip();
      if (plain.equals(tag) || ("W/" + plain).equals(tag)) {
        return true;
      }
    }
    return false;
  }

  private static String tag(String address, String state) {
    return "W/\"" + hash(address + " " + state) + "\"";
  }

  private static String hash(String text) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest, 0, 12);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
