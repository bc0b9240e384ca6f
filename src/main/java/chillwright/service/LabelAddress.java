package chillwright.service;

import chillwright.logfile.CardCells;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** The address that a label leads to: where a phone in the kitchen finds this service. */
public final class LabelAddress {
  static final String CELL = "address";
  static final int LONGEST = 200;

  private static final String ALLOWED = "http:// or https://, a name, and a port if one is needed";
  private static final int HIGHEST_PORT = 65_535;

  private LabelAddress() {}

  /** The address in its plain form; what is wrong with it is told to the cells. */
  static Optional<String> read(String text, CardCells cells) {
    Optional<URI> uri = uri(text.endsWith("/") ? text.substring(0, text.length() - 1) : text);
    if (uri.isEmpty()) {
      cells.refuse(
          CELL,
          "bad-address",
          ALLOWED,
          "Write the address as a phone in the kitchen opens it, such as"
              + " http://kitchen-pc:8080, and nothing after it.");
      return Optional.empty();
    }
    if (isLoopback(uri.get().getHost())) {
      cells.refuse(
          CELL,
          "loopback",
          "a name or number that other machines know",
          "%s is what every machine calls itself: a phone would look on itself. Give the name or"
                  .formatted(uri.get().getHost())
              + " number of this machine on the kitchen's network.");
      return Optional.empty();
    }
    return uri.map(URI::toString);
  }

  private static Optional<URI> uri(String text) {
    try {
      URI uri = new URI(text.toLowerCase(Locale.ROOT));
      boolean isWeb = "http".equals(uri.getScheme()) || "https".equals(uri.getScheme());
      boolean isNamed = uri.getHost() != null && uri.getRawUserInfo() == null;
      boolean isPort = uri.getPort() != 0 && uri.getPort() <= HIGHEST_PORT;
      boolean isAll = uri.toString().equals(uri.getScheme() + "://" + uri.getRawAuthority());
      return isWeb && isNamed && isPort && isAll ? Optional.of(uri) : Optional.empty();
    } catch (URISyntaxException e) {
      return Optional.empty();
    }
  }

  /** Whether a name is one by which every machine calls itself (RFC 6761 6.3, RFC 1122 3.2.1.3). */
  public static boolean isLoopback(String host) {
    String name = host.toLowerCase(Locale.ROOT);
    return name.equals("localhost")
        || name.endsWith(".localhost")
        || name.matches("127(\\.\\d+){3}")
        || Set.of("::1", "[::1]", "[0:0:0:0:0:0:0:1]", "0.0.0.0").contains(name);
  }
}
