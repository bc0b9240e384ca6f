package chillwright.web;

import chillwright.web.answers.Json;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** The description of the API, written by hand as YAML and told as JSON. */
final class OpenApi {
  private static final String FILE = "/openapi.yaml";
  private static final byte[] JSON = read();

  private OpenApi() {}

  static byte[] json() {
    return JSON.clone();
  }

  private static byte[] read() {
    try (InputStream in = OpenApi.class.getResourceAsStream(FILE)) {
      Object described = new Load(LoadSettings.builder().build()).loadFromInputStream(in);
      return Json.MAPPER.writeValueAsBytes(described);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
