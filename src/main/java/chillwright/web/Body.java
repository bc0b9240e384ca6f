package chillwright.web;

import chillwright.web.answers.Answers;
import chillwright.web.answers.Answers.Fault;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import io.javalin.http.Header;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeoutException;

/** The JSON object that a request carries. */
final class Body {
  /** The most bytes of a body: 1 MB. */
  static final int LARGEST = 1_000_000;

  /** What is read and thrown away of a body too large, so that its sender hears the answer. */
  private static final int THROWN_AWAY = 16 * LARGEST;

  private static final Semaphore HEARD_OUT = new Semaphore(16);
  private static final int DEEPEST = 32;
  private static final String JSON = "application/json";

  /** Strict: a doubled key or words after the end would let two readers read two things. */
  private static final ObjectMapper STRICT =
      JsonMapper.builder(
              new JsonFactoryBuilder()
                  .streamReadConstraints(
                      StreamReadConstraints.builder()
                          .maxNestingDepth(DEEPEST)
                          .maxNumberLength(100)
                          .build())
                  .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                  .build())
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .build();

  private final byte[] bytes;
  private final ObjectNode json;

  private Body(byte[] bytes, ObjectNode json) {
    this.bytes = bytes;
    this.json = json;
  }

  /** Exactly as sent: what tells one request from another. */
  byte[] bytes() {
    return bytes.clone();
  }

  ObjectNode json() {
    return json;
  }

  /**
   * @throws RequestFault if it is no JSON object that can be read
   */
  static Body of(Context context) {
    // JSON is UTF-8 (RFC 8259 section 8.1).
    BodyType.require(context, JSON, "JSON");
    byte[] bytes = bytes(context);
    return new Body(bytes, object(parsed(text(bytes))));
  }

  private static byte[] bytes(Context context) {
    long declared = context.req().getContentLengthLong();
    boolean isAsking = context.header(Header.EXPECT) != null;
    if (declared > LARGEST && isAsking) {
      throw tooLarge();
    }
    try {
      InputStream in = context.req().getInputStream();
      byte[] bytes = in.readNBytes(LARGEST + 1);
      if (bytes.length > LARGEST) {
        throwAway(in);
        throw tooLarge();
      }
      return bytes;
    } catch (IOException e) {
      throw cutShort(e, "Send it again with the same key.");
    }
  }

  static RequestFault cutShort(IOException e, String whatToDo) {
    return new RequestFault(
        e.getCause() instanceof TimeoutException ? 408 : RequestFault.UNREADABLE,
        new Fault(
            "cut-short",
            new Answers.InRequest("body"),
            "",
            "the whole body, as long as its headers say",
            "The body did not arrive whole. " + whatToDo));
  }

  /**
   * Reads on for a while, so that a sender who does not listen meanwhile hears the answer. Only so
   * many are heard out at once: else those who send nothing more would hold every thread.
   */
  static void throwAway(InputStream in) throws IOException {
    if (!HEARD_OUT.tryAcquire()) {
      return;
    }
    try {
      readAway(in);
    } finally {
      HEARD_OUT.release();
    }
  }

  private static void readAway(InputStream in) throws IOException {
    byte[] thrown = new byte[8192];
    long left = THROWN_AWAY;
    for (int read = in.read(thrown); read >= 0 && left > 0; read = in.read(thrown)) {
      left -= read;
    }
  }

  private static RequestFault tooLarge() {
    return new RequestFault(
        413,
        new Fault(
            "too-large",
            new Answers.InRequest("body"),
            "more than " + LARGEST + " bytes",
            "at most " + LARGEST + " bytes",
            "The body is larger than 1 MB. Send the entries in several requests."));
  }

  private static String text(byte[] bytes) {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw unreadable(
          "not-utf-8",
          new Answers.InRequest("body"),
          "text in UTF-8",
          "The body holds bytes that are not UTF-8.");
    }
  }

  private static JsonNode parsed(String text) {
    try {
      JsonNode json = STRICT.readTree(text);
      if (json.isMissingNode()) {
        throw unreadable(
            "empty-body", new Answers.InRequest("body"), "a JSON object", "The body is empty.");
      }
      return json;
    } catch (JsonProcessingException e) {
      throw notJson(e);
    }
  }

  private static RequestFault notJson(JsonProcessingException e) {
    JsonLocation at = Optional.ofNullable(e.getLocation()).orElse(JsonLocation.NA);
    Answers.InBody where =
        new Answers.InBody(Math.max(1, at.getLineNr()), Math.max(1, at.getColumnNr()));
    String place = " at line " + where.line() + ", column " + where.column();
    if (e instanceof StreamConstraintsException) {
      return unreadable(
          "too-deep",
          where,
          "at most " + DEEPEST + " levels, and numbers of at most 100 digits",
          "The JSON is nested too deeply, or a number in it is too long," + place + ".");
    }
    if (e.getOriginalMessage().contains("Duplicate")) {
      return unreadable(
          "doubled-key", where, "each key once", "A key stands twice in one object" + place + ".");
    }
    return unreadable(
        "not-json",
        where,
        "JSON as in RFC 8259",
        "The body is not JSON" + place + ". Check quotes, commas and brackets there.");
  }

  private static RequestFault unreadable(String code, Object where, String allowed, String says) {
    return new RequestFault(RequestFault.UNREADABLE, new Fault(code, where, "", allowed, says));
  }

  private static ObjectNode object(JsonNode json) {
    if (json instanceof ObjectNode object) {
      return object;
    }
    throw new RequestFault(
        RequestFault.WRONG,
        new Fault(
            "wrong-type",
            new Answers.InField("", ""),
            Shown.kind(json),
            "an object",
            "The body must be a JSON object, such as {\"entry\": \"reading\"}."));
  }
}
