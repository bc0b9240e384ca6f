package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A page says what a cook would say: no key of a table, no moment as files write it, no text left
 * to be filled in. Our own rule.
 */
class PlainWordsTest {
  /** What may hold such things: codes set as codes, and a file written by hand. */
  private static final Pattern CODES =
      Pattern.compile(
          "(?s)<(code|textarea|pre|script|style)\\b[^>]*>.*?</\\1>"
              + "|<(\\w+)[^>]* class=\"code\"[^>]*>.*?</\\2>");

  private static final Pattern RAW =
      Pattern.compile(
          "\\b[A-Za-z]+(?:_[A-Za-z]+)+\\b"
              + "|\\b\\d{4}-\\d{2}-\\d{2}\\b"
              + "|T\\d{2}:\\d{2}"
              + "|\\{\\d\\}"
              + "|\\b(?:not-shown|no-rule|model-code|full-freezer|half-freezer)\\b");

  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"en", "es"})
  void no_page_shows_a_raw_code(String language) throws IOException {
    try (Served served = Served.in(folder)) {
      SpanishPagesTest.fill(served);
      List<String> raw = new ArrayList<>();
      for (String page : SpanishPagesTest.pages(served)) {
        Reply reply = served.get(page, "Accept-Language", language);
        // Labels of food that is not for use are asked about before they are made.
        boolean isAsked = page.contains("/labels.pdf") && reply.text().contains("name=\"sure\"");
        assertThat(reply.status()).as(page).isEqualTo(isAsked ? 422 : 200);
        raw(reply.text()).forEach(found -> raw.add(page + ": " + found));
      }
      assertThat(raw).isEmpty();
    }
  }

  private static List<String> raw(String page) {
    if (!page.startsWith("<!doctype html>")) {
      return List.of();
    }
    List<String> raw = new ArrayList<>();
    for (String text : CODES.matcher(page).replaceAll(" ").split("<[^>]*>", -1)) {
      if (RAW.matcher(text).find()) {
        raw.add(text.strip());
      }
    }
    return raw;
  }

  @Test
  void raw_codes_are_found() {
    String page = "<!doctype html><time datetime=\"2026-11-24T14:05:00Z\">%s</time>";
    for (String code :
        List.of("soup_or_stew", "DATE_MARK", "2026-11-24", "at T14:05", "by {0}", "not-shown")) {
      assertThat(raw(page.formatted(code))).as(code).hasSize(1);
    }
    assertThat(raw(page.formatted("<code>soup_or_stew</code> Tue 24 Nov 14:05"))).isEmpty();
  }
}
