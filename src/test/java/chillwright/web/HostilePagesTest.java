package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Names that try to break out of the pages, typed into every field and looked for everywhere. */
class HostilePagesTest {
  private static final Pattern TITLE = Pattern.compile("(?s)<title>.*?</title>");
  private static final Pattern TAG = Pattern.compile("(?s)<[^>]*>");

  /** Marks and letters that turn around what stands beside them. */
  private static final Pattern TURNS = Pattern.compile("[\\u202a-\\u202e\\u0590-\\u06ff]");

  private static Served served;
  private static Visit visit;

  static List<String> names() {
    return List.of(
        "<script>alert(1)</script>",
        "</title></textarea></option><img src=x onerror=alert(1)>",
        "\"'><b>&amp;&#60;",
        "' onmouseover='alert(1)",
        "a%n%s{{7*7}}${jndi:x}{0}{1}",
        "soup\u202egnp.exe",
        "\u05de\u05e8\u05e7 \u0634\u0648\u0631\u0628\u0629",
        "\u6c64\u7f8e \u30b9\u30fc\u30d7",
        "\ud83c\udf72".repeat(250),
        "x".repeat(500));
  }

  @BeforeAll
  static void open(@TempDir Path folder) {
    served = Served.in(folder);
    visit = new Visit(served);
    visit.open("/");
    for (int i = 0; i < names().size(); i++) {
      begin("H-" + i, names().get(i), "cooked", "180");
      begin("F-" + i, names().get(i), "frozen", "0");
    }
    served.at("2026-03-03T20:30:00Z");
    for (int i = 0; i < names().size(); i++) {
      String name = names().get(i);
      log("H-" + i, "reading", name, "temperature", "90", "scale", "F", "probe", name);
      log("H-" + i, "action", name);
      log("F-" + i, "portions", name, "portions", "1", "to", name);
      begin("R-" + i, name, "cooked", "180");
    }
  }

  @AfterAll
  static void close() {
    served.close();
  }

  private static void begin(String lot, String name, String word, String figure) {
    Reply made =
        visit.submit(
            "/new-batch",
            Stream.of(
                    Stream.of("lot", lot, "food", name, "category", "soup_or_stew"),
                    Stream.of("entry", word, "temperature", figure, "scale", "F"),
                    Stream.of("portions", "9", "place", name, "note", name, "by", name))
                .flatMap(fields -> fields)
                .toArray(String[]::new));
    assertThat(made.status()).as(made.text()).isEqualTo(303);
  }

  private static void log(String lot, String word, String name, String... more) {
    Reply logged =
        visit.confirm(
            "/lots/" + lot + "/entries",
            Stream.concat(
                    Stream.of("entry", word, "place", name, "note", name, "by", name),
                    Stream.of(more))
                .toArray(String[]::new));
    assertThat(logged.status()).as(logged.text()).isEqualTo(303);
  }

  /** Every page that shows what people wrote, with the name in its questions too. */
  private static List<String> pages(String name) {
    int number = names().indexOf(name);
    String asked = Visit.encoded(name);
    return List.of(
        "/",
        "/lots",
        "/on-hand",
        "/on-hand?place=" + asked,
        "/new-batch",
        "/lots/H-" + number,
        "/lots/F-" + number,
        "/lots/R-" + number,
        "/lots/" + asked.replace("+", "%20").replace("%2F", "").replace("%25", ""),
        "/keeps?category=" + asked + "&hours=" + asked,
        "/keeps?category=soup_or_stew&made=" + asked,
        "/record",
        "/record?from=" + asked + "&to=" + asked,
        "/kitchen");
  }

  @ParameterizedTest
  @MethodSource("names")
  void a_name_is_only_text_on_every_page(String name) {
    for (String address : pages(name)) {
      Reply page = visit.open(address);
      boolean isRefused = address.startsWith("/keeps?");
      assertThat(page.status()).as(address).isIn(isRefused ? List.of(422) : List.of(200, 404));
      assertThat(page.header("Content-Type")).as(address).startsWith("text/html");
      assertThat(page.text()).as(address).doesNotContain("<script>", "</textarea></option>");
      assertThat(PageText.inline(page.text())).as(address).isEmpty();
    }
  }

  @ParameterizedTest
  @MethodSource("names")
  void a_name_is_shown_whole(String name) {
    int number = names().indexOf(name);
    String shown = "<bdi>" + PageText.escaped(name) + "</bdi>";
    List<String> lists = List.of("/", "/lots", "/on-hand", "/record");
    Stream.concat(lists.stream(), Stream.of("H-", "F-", "R-").map(lot -> "/lots/" + lot + number))
        .forEach(address -> assertThat(visit.open(address).text()).as(address).contains(shown));
  }

  /** Nothing that a person wrote turns around the text of ours that stands beside it. */
  @ParameterizedTest
  @MethodSource("names")
  void a_name_keeps_its_direction_to_itself(String name) {
    for (String address : pages(name)) {
      String page = TITLE.matcher(visit.open(address).text()).replaceAll("");
      String ours = TAG.matcher(PageText.outsideBdi(page)).replaceAll("");
      assertThat(TURNS.matcher(ours).find()).as(address + ours).isFalse();
    }
  }

  @Test
  void what_was_typed_into_a_refused_form_is_only_text_too() {
    for (String name : names()) {
      Reply lot =
          visit.submit(
              "/lots/R-0/entries",
              Stream.of("entry", "temperature", "how", "place", "portions", "air", "probe", "by")
                  .flatMap(field -> Stream.of(field, name))
                  .toArray(String[]::new));
      Reply batch =
          visit.submit(
              "/new-batch",
              Stream.of("food", "category", "entry", "temperature", "lot", "containers", "from")
                  .flatMap(field -> Stream.of(field, name))
                  .toArray(String[]::new));
      for (Reply refused : List.of(lot, batch)) {
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.text())
            .contains("role=\"alert\"")
            .doesNotContain("<script>", "</textarea></option>");
        assertThat(PageText.inline(refused.text())).isEmpty();
      }
    }
  }
}
