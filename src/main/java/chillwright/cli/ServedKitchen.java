package chillwright.cli;

import chillwright.logfile.Texts;
import chillwright.service.Imports.Imported;
import chillwright.service.Progress;
import chillwright.web.answers.Json;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.regex.Pattern;

/** A kitchen that a service of this program serves, here or elsewhere. */
final class ServedKitchen {
  private static final String API = "/api/v1";
  private static final Pattern KEY = Pattern.compile("[A-Za-z0-9._~+/=-]{1,200}");
  private static final Duration PATIENCE = Duration.ofSeconds(10);

  /** What an answer of ours stays far below, in bytes. */
  private static final int LARGEST_ANSWER = 16_000_000;

  private static final int OK = 200;
  private static final int NO_KEY = 401;
  private static final int BUSY = 409;
  private static final int TOO_LARGE = 413;
  private static final int WRONG = 422;

  private final String address;
  private final Optional<String> key;

  /** Of the older protocol, which the service speaks. */
  private final HttpClient client =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).connectTimeout(PATIENCE).build();

  private ServedKitchen(String address, Optional<String> key) {
    this.address = address;
    this.key = key;
  }

  /**
   * Asks there first whether it is one.
   *
   * @throws UsageFault in plain words if it cannot be reached so
   */
  static ServedKitchen at(String address, Optional<String> key) {
    if (key.isPresent() && !KEY.matcher(key.get()).matches()) {
      throw fault("--key has characters that no access key has. Give it as it was printed.");
    }
    ServedKitchen kitchen = new ServedKitchen(checked(address), key);
    kitchen.requireThere();
    return kitchen;
  }

  String address() {
    return address;
  }

  private static String checked(String address) {
    try {
      URI uri = URI.create(address);
      String scheme = Optional.ofNullable(uri.getScheme()).orElse("");
      boolean isPlain =
          uri.getHost() != null
              && uri.getRawUserInfo() == null
              && uri.getRawQuery() == null
              && uri.getRawFragment() == null;
      if (isPlain && (scheme.equals("http") || scheme.equals("https"))) {
        return address.replaceFirst("/+$", "");
      }
    } catch (IllegalArgumentException unreadable) {
      // Told like any other address that cannot be used.
    }
    throw fault("--to " + address + " is no address. Write one such as http://127.0.0.1:8421.");
  }

  private void requireThere() {
    HttpRequest.Builder request = request(API + "/kitchen").timeout(PATIENCE).GET();
    Answer answer;
    try {
      answer = answer(request.build(), () -> true);
    } catch (IOException unheard) {
      throw fault("No kitchen answers at " + address + ". Is `chillwright serve` running there?");
    }
    if (answer.status() != OK || !answer.json().at("/ruleSet/id").isTextual()) {
      throw refusal(answer);
    }
  }

  /** What came back; {@code json} is missing where it is none. */
  private record Answer(int status, JsonNode json) {
    JsonNode problems() {
      return json.path("problems");
    }
  }

  /**
   * Sends a file, as a stream.
   *
   * @throws UsageFault in plain words if it is not taken for another reason than its own faults
   * @throws IOException if the file cannot be read
   */
  Imported take(Path file, boolean goodLotsOnly, Progress progress) throws IOException {
    SentFile body = new SentFile(file, progress);
    HttpRequest.Builder request =
        request(
                "%s/imports?name=%s&goodLotsOnly=%s"
                    .formatted(
                        API, URLEncoder.encode(name(file), StandardCharsets.UTF_8), goodLotsOnly))
            .header("Content-Type", "text/csv; charset=utf-8");
    // With nothing to send there is nothing to wait for (RFC 9110 section 10.1.1).
    request.expectContinue(body.length() > 0);
    request.POST(body.length() > 0 ? body.publisher() : BodyPublishers.noBody());
    Answer answer;
    try {
      answer = answer(request.build(), body::isBegun);
    } catch (IOException cutOff) {
      body.requireRead();
      throw fault(
          "The line to "
              + address
              + " went dead before it answered for "
              + file
              + ". Send it again: what was stored is skipped then.");
    }
    boolean isOfTheFile =
        answer.status() == OK || (answer.status() == WRONG && answer.problems().isArray());
    if (!isOfTheFile) {
      throw body.isBegun() ? refusal(answer) : refusalUnsent(answer.status(), file);
    }
    return ImportAnswer.read(answer.json(), file.toString());
  }

  /** The name under which faults are told there: without its folders, which are no concern. */
  private static String name(Path file) {
    return Texts.shown(Optional.ofNullable(file.getFileName()).orElse(file).toString());
  }

  private HttpRequest.Builder request(String path) {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create(address + path)).header("Accept", "application/json");
    key.ifPresent(known -> request.header("Authorization", "Bearer " + known));
    return request;
  }

  /**
   * @param isReadable whether the body of the answer will come, asked once its status has
   */
  private Answer answer(HttpRequest request, BooleanSupplier isReadable) throws IOException {
    try {
      HttpResponse<InputStream> response = client.send(request, BodyHandlers.ofInputStream());
      try (InputStream in = response.body()) {
        // Java 17 never hands on the body of a refusal that came instead of 100 (Continue).
        byte[] bytes = isReadable.getAsBoolean() ? in.readNBytes(LARGEST_ANSWER) : new byte[0];
        return new Answer(response.statusCode(), json(bytes));
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw fault("Stopped while it waited for " + address + ".");
    }
  }

  private static JsonNode json(byte[] bytes) {
    try {
      return Optional.ofNullable(Json.MAPPER.readTree(bytes)).orElse(MissingNode.getInstance());
    } catch (IOException none) {
      return MissingNode.getInstance();
    }
  }

  private UsageFault refusal(Answer answer) {
    if (answer.problems().isEmpty()) {
      return fault(
          "What answers at "
              + address
              + " is no Chillwright that takes files. Check the address and its version.");
    }
    if (answer.status() == NO_KEY) {
      return fault(
          key.isPresent()
              ? address + " does not know this access key. Check --key; nothing was stored."
              : address + " asks for its access key. Give it with --key; nothing was stored.");
    }
    String says = answer.problems().path(0).path("says").asText();
    return fault(address + " does not take it: " + ImportAnswer.shown(says));
  }

  /** Refused before it was sent, which is told by a number alone. */
  private UsageFault refusalUnsent(int status, Path file) {
    return fault(
        switch (status) {
          case BUSY ->
              ("Another file is being taken in at %s. Wait until that is done and send %s again;"
                      + " nothing of it was stored.")
                  .formatted(address, file);
          case TOO_LARGE ->
              "%s is too large for %s. Send it in parts, each with a header row and whole lots."
                  .formatted(file, address);
          default ->
              "%s does not take %s (it answers %d); nothing of it was stored."
                  .formatted(address, file, status);
        });
  }

  private static UsageFault fault(String says) {
    return new UsageFault(says, List.of());
  }
}
