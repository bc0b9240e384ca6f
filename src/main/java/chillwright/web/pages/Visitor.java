package chillwright.web.pages;

import chillwright.core.measure.Temperature.Scale;
import chillwright.print.Language;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.Header;
import io.javalin.http.SameSite;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Optional;

/**
 * What a browser told of the person before it, by cookies that only this service can read.
 *
 * @param token stands in every form, so that no page elsewhere can send one
 * @param by the initials last written here, offered again; blank for none
 */
public record Visitor(Language language, Scale scale, String token, String by) {
  static final String LANGUAGE = "language";
  static final String SCALE = "scale";

  private static final String VISIT = "visit";
  private static final String BY = "by";
  private static final int LONGEST_BY = 20;
  private static final int RANDOM_BYTES = 16;
  private static final int YEAR = 365 * 24 * 60 * 60;
  private static final SecureRandom RANDOM = new SecureRandom();

  /**
   * @param usual the scale the kitchen prefers
   */
  static Visitor of(Context context, Scale usual) {
    Language language =
        Optional.ofNullable(context.cookie(LANGUAGE))
            .flatMap(Language::ofTag)
            .orElseGet(() -> Language.ofHeader(header(context)));
    Scale scale = Optional.ofNullable(context.cookie(SCALE)).flatMap(Visitor::scale).orElse(usual);
    String visit = context.cookie(VISIT);
    if (visit == null || visit.length() > 100) {
      visit = random();
      keep(context, VISIT, visit, true);
    }
    return new Visitor(language, scale, hash(visit), by(context));
  }

  /** Keeps the initials that a form was sent with, to offer them again. */
  static void remember(Context context, Form form) {
    String by = form.text(BY);
    if (!by.isBlank() && isPlain(by)) {
      keep(context, BY, URLEncoder.encode(by.strip(), StandardCharsets.UTF_8), true);
    }
  }

  private static String by(Context context) {
    try {
      String kept = Optional.ofNullable(context.cookie(BY)).orElse("");
      String by = URLDecoder.decode(kept, StandardCharsets.UTF_8);
      return isPlain(by) ? by : "";
    } catch (IllegalArgumentException broken) {
      return "";
    }
  }

  /** Short, and nothing in it that cannot be seen. */
  private static boolean isPlain(String by) {
    return by.length() <= LONGEST_BY
        && by.codePoints()
            .map(Character::getType)
            .noneMatch(type -> type == Character.CONTROL || type == Character.FORMAT);
  }

  private static String header(Context context) {
    return Optional.ofNullable(context.header(Header.ACCEPT_LANGUAGE)).orElse("");
  }

  /** The same person, reading another language if one is named. */
  Visitor reading(Optional<String> tag) {
    return tag.flatMap(Language::ofTag)
        .map(named -> new Visitor(named, scale, token, by))
        .orElse(this);
  }

  static Optional<Scale> scale(String letter) {
    return switch (letter) {
      case "F" -> Optional.of(Scale.FAHRENHEIT);
      case "C" -> Optional.of(Scale.CELSIUS);
      default -> Optional.empty();
    };
  }

  /** The letter that stands after a figure where the person writes none. */
  public String scaleLetter() {
    return EntryForm.letter(scale);
  }

  /** That of the scale that was not chosen. */
  public String otherLetter() {
    return scale == Scale.FAHRENHEIT ? "C" : "F";
  }

  /** Kept for a year; not marked as secure, since kitchens use plain HTTP on their own network. */
  static void keep(Context context, String name, String value, boolean hidden) {
    Cookie cookie = new Cookie(name, value, "/", YEAR, false, hidden);
    cookie.setSameSite(SameSite.STRICT);
    context.cookie(cookie);
  }

  /** Text that nobody can guess, to tell one sending of a form from another. */
  static String random() {
    byte[] bytes = new byte[RANDOM_BYTES];
    RANDOM.nextBytes(bytes);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  private static String hash(String visit) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      byte[] hash = digest.digest(("form " + visit).getBytes(StandardCharsets.UTF_8));
      return Base64.getUrlEncoder().withoutPadding().encodeToString(hash);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** A text of the pages in this person's language. */
  public String say(String key, Object... filled) {
    return Wording.text(language, key, filled);
  }
}
