package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.print.Language;
import chillwright.print.Texts;
import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A page in Spanish is Spanish: every page, with an invented kitchen on it. Our own rule. */
class SpanishPagesTest {
  private static final Path LOGS = Path.of("sample-logs");
  private static final Pattern OTHER =
      Pattern.compile("(?s)<(\\w+)[^>]* lang=\"en\"[^>]*>.*?</\\1>");
  private static final Pattern PLACE = Pattern.compile("\\{[0-9]}");

  /** A text with places to fill in is looked for only if so much of it is its own. */
  private static final int OWN = 8;

  @TempDir private Path folder;

  @Test
  void no_text_of_ours_is_left_in_english() throws IOException {
    try (Served served = Served.in(folder)) {
      Set<String> names = fill(served);
      List<Pattern> english = english();
      List<String> left = new ArrayList<>();
      for (String page : pages(served)) {
        for (String text : texts(served.get(page, "Accept-Language", "es"))) {
          boolean isOurs = english.stream().anyMatch(of -> of.matcher(text).matches());
          if (isOurs && !names.contains(text.strip())) {
            left.add(page + ": " + text);
          }
        }
      }
      assertThat(left).isEmpty();
    }
  }

  /** Every page, those of a lot for each of its lots. */
  static List<String> pages(Served served) {
    List<String> pages = new ArrayList<>();
    for (String page : PageSecurityTest.pages(served)) {
      if (page.contains("{lot}")) {
        lots(served).forEach(lot -> pages.add(page.replace("{lot}", lot)));
      } else {
        pages.add(page);
      }
    }
    pages.add("/keeps?category=soup_or_stew&made=2026-11-20&frozen=2026-11-22&thawed=2026-11-23");
    pages.add("/keeps?category=soup_or_stew&frozen=2026-11-22");
    return pages;
  }

  /** An invented kitchen; the names that its people gave. */
  static Set<String> fill(Served served) throws IOException {
    PageSecurityTest.plan(served);
    served.at("2026-11-24T21:00:00Z");
    for (String file : List.of("week-1.csv", "week-2.csv", "week-3.csv", "places.csv")) {
      Reply reply = served.postCsv("/api/v1/imports", Files.readString(LOGS.resolve(file)));
      assertThat(reply.status()).as(reply.text()).isEqualTo(200);
    }
    served.kitchen().setUp().place(Map.of("name", "Walk-in", "kind", "refrigerator"));
    Set<String> names = new TreeSet<>();
    JsonNode lots = served.get("/api/v1/lots?limit=200").json().at("/items");
    lots.forEach(lot -> names.add(lot.at("/food").asText()));
    lots.forEach(lot -> names.add(lot.at("/place").asText()));
    JsonNode places = served.get("/api/v1/days/2026-11-24").json().at("/places");
    places.forEach(place -> names.add(place.at("/name").asText()));
    return names;
  }

  private static List<String> lots(Served served) {
    JsonNode lots = served.get("/api/v1/lots?limit=200").json().at("/items");
    return lots.findValuesAsText("lot").stream().distinct().toList();
  }

  /** What our files of words say in English and not in Spanish. */
  private static List<Pattern> english() {
    List<Pattern> english = new ArrayList<>();
    for (String file : List.of("/words/pages.properties", "/words/print.properties")) {
      Texts texts = new Texts(file);
      for (String key : texts.keys()) {
        String name = key.substring(0, key.length() - ".en".length());
        String text = texts.text(Language.ENGLISH, name);
        String own = PLACE.matcher(text).replaceAll("");
        boolean differs = !text.equals(texts.text(Language.SPANISH, name));
        if (differs && (own.equals(text) || own.replaceAll("\\P{L}", "").length() >= OWN)) {
          english.add(
              Pattern.compile(
                  PLACE
                      .splitAsStream(text + " ")
                      .map(Pattern::quote)
                      .collect(Collectors.joining(".+"))));
        }
      }
    }
    return english;
  }

  /** The texts between the tags of a page; none of a document of another kind. */
  private static List<String> texts(Reply page) {
    // Labels of food that is not for use are asked about before they are made.
    boolean isAsked = page.text().contains("name=\"sure\"");
    assertThat(page.status()).isIn(200, isAsked ? 422 : 200);
    if (!page.header("Content-Type").startsWith("text/html")) {
      return List.of();
    }
    String ours = OTHER.matcher(page.text()).replaceAll(" ");
    return Pattern.compile("<[^>]*>")
        .splitAsStream(ours)
        .map(SpanishPagesTest::plain)
        .filter(text -> text.matches(".*\\p{L}.*"))
        .map(text -> text + " ")
        .toList();
  }

  private static String plain(String text) {
    return text.replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&#34;", "\"")
        .replace("&#39;", "'")
        .replace("&amp;", "&")
        .replaceAll("\\s+", " ")
        .strip();
  }
}
