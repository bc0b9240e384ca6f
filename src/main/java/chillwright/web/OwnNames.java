package chillwright.web;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.UnknownHostException;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The names, with their ports, by which the service is rightly called. A web page elsewhere can
 * make a browser send a request here, but not under one of these names, nor with such an origin.
 */
final class OwnNames {
  private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[::1]");

  /** Ports that clients leave out, of http and https. */
  private static final Set<String> UNSPOKEN = Set.of("80", "443");

  /** An IPv6 address stands in brackets, so the last colon is that of the port. */
  private static final Pattern NAME_AND_PORT = Pattern.compile("(\\[.*]|[^\\[:]*):(\\d{1,5})");

  private final Set<String> names = new HashSet<>();
  private final Set<String> withPort = new HashSet<>();
  private final boolean isEveryAddress;

  /**
   * @param bound the address the service listens at
   * @param given further names, with the port by which clients call them where it is another
   */
  OwnNames(InetAddress bound, List<String> given) {
    this.isEveryAddress = bound.isAnyLocalAddress();
    LOOPBACK.stream().map(OwnNames::normal).forEach(names::add);
    names.add(literal(bound));
    given.stream().map(OwnNames::normal).forEach(this::add);
  }

  private void add(String name) {
    Matcher matcher = NAME_AND_PORT.matcher(name);
    if (!matcher.matches()) {
      names.add(name);
      return;
    }
    withPort.add(name);
    if (UNSPOKEN.contains(matcher.group(2))) {
      withPort.add(matcher.group(1));
    }
  }

  /**
   * Whether that is a name of the service.
   *
   * @param authority name and port, as in a Host header
   * @param reached the end of the connection on this machine
   */
  boolean isOwn(String authority, InetSocketAddress reached) {
    String normal = normal(authority);
    if (withPort.contains(normal)) {
      return true;
    }
    String port = Integer.toString(reached.getPort());
    Matcher matcher = NAME_AND_PORT.matcher(normal);
    boolean hasPort = matcher.matches();
    boolean isOwnPort = hasPort ? matcher.group(2).equals(port) : UNSPOKEN.contains(port);
    String name = hasPort ? matcher.group(1) : normal;
    boolean isOwnName =
        names.contains(name) || (isEveryAddress && name.equals(literal(reached.getAddress())));
    return isOwnName && isOwnPort;
  }

  /** Whether a page of that origin is one of the service's own. */
  boolean isOwnOrigin(String origin, InetSocketAddress reached) {
    String normal = origin.toLowerCase(Locale.ROOT);
    for (String scheme : List.of("http://", "https://")) {
      if (normal.startsWith(scheme)) {
        return isOwn(normal.substring(scheme.length()), reached);
      }
    }
    return false;
  }

  private static String literal(InetAddress address) {
    String text = address.getHostAddress().replaceFirst("%.*", "");
    return normal(text.contains(":") ? "[" + text + "]" : text);
  }

  /** In lower case, and an IPv6 address in the one form that Java writes. */
  private static String normal(String authority) {
    String lower = authority.toLowerCase(Locale.ROOT);
    int end = lower.indexOf(']');
    if (!lower.startsWith("[")) {
      return lower;
    }
    if (!lower.matches("\\[[0-9a-f:.]+\\].*") || end < 0) {
      return lower;
    }
    try {
      String address = InetAddress.getByName(lower.substring(1, end)).getHostAddress();
      return "[" + address + lower.substring(end);
    } catch (UnknownHostException e) {
      return lower;
    }
  }
}
