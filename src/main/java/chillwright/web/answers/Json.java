package chillwright.web.answers;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;

/** How this program writes and reads JSON: times as RFC 3339, durations as ISO 8601. */
public final class Json {
  /** The one mapper; safe for use by several threads. */
  public static final ObjectMapper MAPPER =
      JsonMapper.builder()
          .addModule(new Jdk8Module())
          .addModule(new JavaTimeModule())
          .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
          .disable(SerializationFeature.WRITE_DURATIONS_AS_TIMESTAMPS)
          .disable(DeserializationFeature.ADJUST_DATES_TO_CONTEXT_TIME_ZONE)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private Json() {}

  /** An answer as text that a person can read too. */
  public static String text(Object answer) {
    try {
      return MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(answer);
    } catch (JsonProcessingException broken) {
      throw new IllegalStateException("an answer could not be written as JSON", broken);
    }
  }
}
