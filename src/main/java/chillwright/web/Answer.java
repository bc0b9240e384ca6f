package chillwright.web;

import chillwright.web.answers.Json;
import com.fasterxml.jackson.core.JsonProcessingException;
import io.javalin.http.Context;

/** Renders answers. */
final class Answer {
  private Answer() {}

  static void json(Context context, Object answer) {
    json(context, 200, answer);
  }

  static void created(Context context, Object answer) {
    json(context, 201, answer);
  }

  private static void json(Context context, int status, Object answer) {
    context.status(status).contentType(Accept.JSON).result(bytes(answer));
  }

  /** An answer that was rendered before. */
  static void json(Context context, byte[] rendered) {
    context.status(200).contentType(Accept.JSON).result(rendered);
  }

  static byte[] bytes(Object answer) {
    try {
      return Json.MAPPER.writeValueAsBytes(answer);
    } catch (JsonProcessingException broken) {
      throw new IllegalStateException("an answer could not be written as JSON", broken);
    }
  }
}
