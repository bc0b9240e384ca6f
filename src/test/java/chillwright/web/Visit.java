package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.net.URLEncoder;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A person with a browser that runs no script: keeps cookies, and sends the token of a form. */
final class Visit {
  private static final Pattern TOKEN = Pattern.compile("name=\"token\" value=\"([^\"]+)\"");

  /** Not the tick of labels, which every page of a lot has that is not for use. */
  private static final Pattern TICK =
      Pattern.compile("name=\"sure\" value=\"([^\"]+)\"(?! required)");

  private static final Pattern ONCE = Pattern.compile("name=\"once\" value=\"([^\"]+)\"");

  private final Served served;
  private final Map<String, String> cookies = new LinkedHashMap<>();
  private String token = "";

  Visit(Served served) {
    this.served = served;
  }

  Reply open(String address, String... headers) {
    Reply reply = send(request(address, headers).GET());
    Matcher found = TOKEN.matcher(reply.text());
    if (found.find()) {
      token = found.group(1);
    }
    return reply;
  }

  /** Sends a form with the token of the page that was opened last; names and values in turn. */
  Reply submit(String address, String... fields) {
    Map<String, String> form = new LinkedHashMap<>();
    form.put("token", token);
    for (int i = 0; i < fields.length; i += 2) {
      form.put(fields[i], fields[i + 1]);
    }
    return submit(address, form);
  }

  Reply submit(String address, Map<String, String> form) {
    return submitted(address, encoded(form));
  }

  /** Sends a form as a browser writes it, with a field as often as it is filled in. */
  Reply submitted(String address, String form) {
    return send(
        request(address, "Content-Type", "application/x-www-form-urlencoded")
            .POST(BodyPublishers.ofString(form)));
  }

  /** Sends a form, and where a page asks about it sends it again with every tick of that page. */
  Reply confirm(String address, String... fields) {
    Reply asked = submit(address, fields);
    return TICK.matcher(asked.text()).find()
        ? submit(address, with(fields, "sure", ticks(asked)))
        : asked;
  }

  /** What the ticks of a page that asks send, all of them ticked. */
  static String ticks(Reply asked) {
    Matcher found = TICK.matcher(asked.text());
    String names = found.results().map(tick -> tick.group(1)).collect(Collectors.joining(" "));
    assertThat(names).as(asked.text()).isNotEmpty();
    return names;
  }

  /** Labels, with every tick where a page asks before they are made. */
  static Reply labels(Served served, String address, String... headers) {
    Reply reply = served.get(address, headers);
    String sign = address.contains("?") ? "&" : "?";
    return TICK.matcher(reply.text()).find()
        ? served.get(address + sign + "sure=" + encoded(ticks(reply)), headers)
        : reply;
  }

  /** The same fields and one more. */
  static String[] with(String[] fields, String name, String value) {
    String[] more = Arrays.copyOf(fields, fields.length + 2);
    more[fields.length] = name;
    more[fields.length + 1] = value;
    return more;
  }

  /** What the first form of a page has to be told apart from the same form sent again. */
  static String once(Reply page) {
    Matcher found = ONCE.matcher(page.text());
    assertThat(found.find()).as(page.text()).isTrue();
    return found.group(1);
  }

  static String encoded(Map<String, String> fields) {
    return fields.entrySet().stream()
        .map(field -> encoded(field.getKey()) + "=" + encoded(field.getValue()))
        .collect(Collectors.joining("&"));
  }

  static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  /** Where an answer leads, without the scheme and the host. */
  static String target(Reply reply) {
    return reply.header("Location").replaceFirst("^https?://[^/]+", "");
  }

  void forget(String cookie) {
    cookies.remove(cookie);
  }

  /** That of the page that was opened last. */
  String token() {
    return token;
  }

  String cookie(String name) {
    return cookies.getOrDefault(name, "");
  }

  private HttpRequest.Builder request(String address, String... headers) {
    HttpRequest.Builder request = served.request(address, headers);
    return cookies.isEmpty()
        ? request
        : request.header(
            "Cookie",
            cookies.entrySet().stream()
                .map(cookie -> cookie.getKey() + "=" + cookie.getValue())
                .collect(Collectors.joining("; ")));
  }

  private Reply send(HttpRequest.Builder request) {
    Reply reply = served.send(request);
    for (String set : setCookies(reply)) {
      String[] pair = set.replaceFirst(";.*", "").split("=", 2);
      cookies.put(pair[0], pair[1]);
    }
    return reply;
  }

  static List<String> setCookies(Reply reply) {
    return reply.response().headers().allValues("Set-Cookie");
  }
}
