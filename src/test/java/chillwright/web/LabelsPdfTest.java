package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.paper.Sheet;
import chillwright.web.Served.Reply;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.LuminanceSource;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.Result;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.multi.qrcode.QRCodeMultiReader;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What stands on printed labels, read back from the PDF. */
class LabelsPdfTest {
  private static final List<String> HOSTILE =
      List.of(
          "<script>x()</script>",
          "Soup ".repeat(100).strip(),
          "abc \u202e\u2066 gnp.exe \u200f",
          "\ud83c\udf72\ud83c\udf72 pot \ufe0f",
          "\u9999\u83c7\u9e21\u6c64",
          "Щи с грибами",
          "\u0634\u0648\u0631\u0628\u0629 (\u0639\u062f\u0633)",
          "W".repeat(200),
          "fi ffi fl office affluent",
          "a\u0301e\u0308\u0323");

  @TempDir static Path folder;

  private static Served served;

  @BeforeAll
  static void serve() {
    served = Served.in(folder);
    served.at("2026-03-06T17:15:00Z");
    cookedAndChilled("L-CHILLED", "Barley and leek soup");
    cookedAndChilled("L-FROZEN", "Barley and leek soup");
    log("L-FROZEN", "{'when':'2026-03-04T09:00:00-07:00','entry':'frozen','how':'hard'}");
    cookedAndChilled("L-THAWED", "Barley and leek soup");
    log("L-THAWED", "{'when':'2026-03-04T09:00:00-07:00','entry':'frozen','how':'hard'}");
    served.at("2026-03-07T17:15:00Z");
    log(
        "L-THAWED",
        "{'when':'2026-03-07T09:00:00-07:00','entry':'thawing','how':'refrigerator',"
            + "'temperature':'38F'}");
    cookedAndChilled("L-GONE", "Barley and leek soup");
    log("L-GONE", "{'when':'2026-03-05T09:00:00-07:00','entry':'discarded'}");
    for (int i = 0; i < HOSTILE.size(); i++) {
      cookedAndChilled("L-H" + i, HOSTILE.get(i));
    }
    cookedLongAgo("L-PAST");
    cookedLongAgo("L-PAST-FROZEN");
    log("L-PAST-FROZEN", "{'when':'2026-03-01T09:00:00-07:00','entry':'frozen','how':'hard'}");
    served.post("/api/v1/lots", "{'lot':'L-WARM','food':'Rice','category':'soup_or_stew'}");
    log("L-WARM", "{'when':'2026-03-06T00:00:00-07:00','entry':'cooked','temperature':'200F'}");
    log("L-WARM", "{'when':'2026-03-06T05:00:00-07:00','entry':'reading','temperature':'99F'}");
    served.post("/api/v1/lots", "{'lot':'L-NEW','food':'Bread dough','category':'soup_or_stew'}");
  }

  @AfterAll
  static void stop() {
    served.close();
  }

  /** Cooked on Tuesday 3 March and cooled in time. */
  private static void cookedAndChilled(String lot, String food) {
    Reply made =
        served.post(
            "/api/v1/lots",
            "{'lot':'%s','food':'%s','category':'soup_or_stew','portions':8}".formatted(lot, food));
    assertThat(made.status()).as(made.text()).isEqualTo(201);
    log(lot, "{'when':'2026-03-03T10:00:00-07:00','entry':'cooked','temperature':'200F'}");
    log(lot, "{'when':'2026-03-03T11:30:00-07:00','entry':'reading','temperature':'69F'}");
    log(lot, "{'when':'2026-03-03T14:00:00-07:00','entry':'chilled','temperature':'40F'}");
  }

  /** Cooked on 18 February: its seventh day was the 24th. */
  private static void cookedLongAgo(String lot) {
    served.post(
        "/api/v1/lots", "{'lot':'%s','food':'Bean stew','category':'soup_or_stew'}".formatted(lot));
    log(lot, "{'when':'2026-02-18T10:00:00-07:00','entry':'cooked','temperature':'200F'}");
    log(lot, "{'when':'2026-02-18T11:30:00-07:00','entry':'reading','temperature':'69F'}");
    log(lot, "{'when':'2026-02-18T14:00:00-07:00','entry':'chilled','temperature':'40F'}");
  }

  private static void log(String lot, String entry) {
    Reply logged = served.post("/api/v1/lots/" + lot + "/entries", entry);
    assertThat(logged.status()).as(logged.text()).isEqualTo(201);
  }

  private static PDDocument pdf(String address, String... headers) throws IOException {
    Reply reply = Visit.labels(served, address, headers);
    assertThat(reply.status()).as(reply.text()).isEqualTo(200);
    assertThat(reply.header("Content-Type")).startsWith("application/pdf");
    return Loader.loadPDF(reply.response().body());
  }

  /** Its words, each break of a line a blank. */
  private static String text(String address, String... headers) throws IOException {
    try (PDDocument pdf = pdf(address, headers)) {
      return new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ").strip();
    }
  }

  /**
   * Limits of FDA Food Code 2022 3-501.14(A) from 135 °F at 10:00: 70 °F by 12:00, 41 °F by 16:00.
   * 135 to 80 °F in an hour in air of 38 °F promises 70 °F after 1.325 h, 11:19 or 11:20 (worked by
   * the method of Hedeen, Schaffner and Brown, J Environ Health, March 2022).
   */
  @Test
  void food_that_cools_bears_its_limits_and_what_was_expected_at_printing() throws IOException {
    served.post("/api/v1/lots", "{'lot':'L-COOLS','food':'Rice','category':'soup_or_stew'}");
    log(
        "L-COOLS",
        "{'when':'2026-03-07T10:00:00-07:00','entry':'cooked','temperature':'135F','air':'38F'}");
    served.at("2026-03-07T18:01:00Z");
    log("L-COOLS", "{'when':'2026-03-07T11:00:00-07:00','entry':'reading','temperature':'80F'}");
    assertThat(text("/lots/L-COOLS/labels.pdf?sheet=a4-8"))
        .contains("Must reach 70 °F by Sat 7 Mar 2026 12:00")
        .contains("Must reach 41 °F by Sat 7 Mar 2026 16:00")
        .containsPattern("Expected at 11:01: 70 °F about 11:(19|20) \\(11:\\d\\d-1[12]:\\d\\d\\)");
    assertThat(text("/lots/L-COOLS/labels.pdf?sheet=a4-8", "Accept-Language", "es"))
        .contains("Previsto a las 11:01: 70 °F");
    served.at("2026-03-07T19:30:00Z");
    assertThat(text("/lots/L-COOLS/labels.pdf?sheet=a4-8")).doesNotContain("Expected at");
    served.at("2026-03-07T17:15:00Z");
  }

  /** All nine of FALCPA 2004 and the FASTER Act 2021; none may be cut off, on any sheet. */
  @ParameterizedTest
  @MethodSource("sheets")
  void all_allergens_that_the_kitchen_named_stand_on_the_label(String sheet) throws IOException {
    food(
        "Harvest pot",
        Map.of(
            "category",
            "soup_or_stew",
            "allergens",
            "milk eggs fish crustacean_shellfish tree_nuts peanuts wheat soybeans sesame",
            "otherAllergens",
            "celery and mustard",
            "ingredients",
            "water,\nbarley"));
    cookedAndChilled("L-" + sheet, "Harvest pot");
    assertThat(text("/lots/L-" + sheet + "/labels.pdf?sheet=" + sheet).replaceAll("\\s+", " "))
        .contains("Contains: milk, eggs, fish, crustacean shellfish, tree nuts, peanuts")
        .contains("wheat, soybeans, sesame, celery and mustard")
        .contains("Discard after");
    assertThat(text("/lots/L-" + sheet + "/labels.pdf?sheet=a4-24")).contains("water, barley");
  }

  /**
   * A tick may have been forgotten, so silence must not read like food free of allergens. The words
   * are ours: common practice, no source.
   */
  @ParameterizedTest
  @MethodSource("sheets")
  void a_label_without_allergens_says_that_none_were_named(String sheet) throws IOException {
    food("Plain rice", Map.of("category", "soup_or_stew"));
    cookedAndChilled("L-NONE-" + sheet, "Plain rice");
    String address = "/lots/L-NONE-" + sheet + "/labels.pdf?sheet=" + sheet;
    assertThat(text(address)).contains("Allergens: none named");
    assertThat(text(address, "Accept-Language", "es")).contains("Alérgenos: ninguno anotado");
    assertThat(text("/lots/L-CHILLED/labels.pdf?sheet=" + sheet))
        .contains("Allergens: NOT ON FILE")
        .doesNotContain("none named");
  }

  /**
   * How to thaw belongs to food that is frozen, and nothing about eating to food that must be
   * discarded. A statement of the kind that cottage-food laws prescribe stands word for word.
   */
  @Test
  void the_words_of_the_kitchen_stand_on_the_label() throws IOException {
    food(
        "Bean stew",
        Map.of(
            "category",
            "soup_or_stew",
            "container",
            "half pan",
            "place",
            "Chest freezer",
            "reheating",
            "In a covered pan,\nstirring.",
            "thawing",
            "In the refrigerator overnight."));
    String statement = "Made in a home kitchen that is not inspected.";
    served.kitchen().setUp().labelStatement(Map.of("statement", statement));
    cookedAndChilled("L-STEW", "Bean stew");
    assertThat(text("/lots/L-STEW/labels.pdf?sheet=a4-8"))
        .contains("In a covered pan, stirring.", "In: half pan")
        .contains("Usual place: Chest freezer", statement)
        .doesNotContain("overnight");
    log("L-STEW", "{'when':'2026-03-04T09:00:00-07:00','entry':'frozen','how':'hard'}");
    for (String sheet : sheets()) {
      assertThat(text("/lots/L-STEW/labels.pdf?sheet=" + sheet)).contains(statement);
    }
    assertThat(text("/lots/L-STEW/labels.pdf?sheet=a4-8"))
        .contains("Thaw: In the refrigerator overnight.");
    assertThat(text("/lots/L-PAST/labels.pdf?sheet=a4-8"))
        .contains(statement)
        .doesNotContain("covered pan");
    served.kitchen().setUp().labelStatement(Map.of());
    assertThat(text("/lots/L-STEW/labels.pdf")).doesNotContain(statement);
  }

  /**
   * 21 CFR 101.7(a), (b): the net quantity of contents, by weight in ounces and in grams; 101.4(a):
   * all ingredients. Whoever buys the food has no use for a place in our freezer.
   */
  @Test
  void a_label_that_leaves_the_kitchen_bears_what_a_buyer_needs_and_nothing_else()
      throws IOException {
    String many = String.join(", ", Collections.nCopies(40, "rolled oats"));
    food(
        "Oat bars",
        Map.of(
            "category", "bar_cookies_cut_and_wrapped",
            "place", "Chest freezer",
            "container", "tray",
            "ingredients", many,
            "allergens", "wheat"));
    served.post(
        "/api/v1/lots",
        "{'lot':'L-BARS','food':'Oat bars','category':'bar_cookies_cut_and_wrapped'}");
    log("L-BARS", "{'when':'2026-03-06T09:00:00-07:00','entry':'cooked'}");
    String net = "&net=Net+Wt+12+oz+(340+g)";
    String bars = "/lots/L-BARS/labels.pdf?sheet=";
    assertThat(text(bars + "letter-10&leaves=yes" + net))
        .contains("Net Wt 12 oz (340 g)", "Ingredients: rolled oats", "Made Fri 6 Mar 2026")
        .doesNotContain("Chest freezer", "tray", "Notes", "Reheat");
    assertThat(codes(bars + "letter-10&leaves=yes" + net)).isEmpty();
    assertThat(text(bars + "letter-10")).contains("Usual place: Chest freezer", "In: tray");
    assertThat(codes(bars + "letter-10")).hasSize(1);
    Reply small = served.get(bars + "roll-50x30&leaves=yes" + net);
    assertThat(small.status()).isEqualTo(400);
    assertThat(small.text()).contains("no room for ingredients", "choose a larger one");
    assertThat(served.get("/lots/L-BARS").text())
        .contains("<option value=\"letter-10\" selected>", "name=\"leaves\"");
    food("Nut bars", Map.of("category", "bar_cookies_cut_and_wrapped", "ingredients", "hazelnuts"));
    served.post(
        "/api/v1/lots",
        "{'lot':'L-NUTS','food':'Nut bars','category':'bar_cookies_cut_and_wrapped'}");
    log("L-NUTS", "{'when':'2026-03-06T09:00:00-07:00','entry':'cooked'}");
    Reply nuts = served.get("/lots/L-NUTS/labels.pdf?sheet=a4-8&leaves=yes");
    assertThat(nuts.status()).isEqualTo(400);
    assertThat(nuts.text()).contains("hazelnuts", "Mend that under Kitchen");
    Reply gone = served.get("/lots/L-GONE/labels.pdf?sheet=a4-8&leaves=yes");
    assertThat(gone.text()).contains("L-GONE is not for use", "not on file");
    assertThat(served.get("/lots/L-BARS").text())
        .contains("Not on file, so not on it: <bdi>the kitchen's name; words that every label");
    Reply wordy = served.get(bars + "letter-10&net=" + "9".repeat(61));
    assertThat(wordy.status()).isEqualTo(400);
    assertThat(wordy.text()).contains("longer than 60 characters");
  }

  private static void bars(String lot, String food) {
    served.post(
        "/api/v1/lots",
        "{'lot':'%s','food':'%s','category':'bar_cookies_cut_and_wrapped'}".formatted(lot, food));
    log(lot, "{'when':'2026-03-04T09:00:00-07:00','entry':'cooked'}");
    log(lot, "{'when':'2026-03-04T11:00:00-07:00','entry':'frozen','how':'hard'}");
  }

  /** By definition, no source: past its best, food gets no new days by freezing or thawing. */
  @Test
  void what_was_past_its_best_before_it_was_frozen_bears_no_later_date() throws IOException {
    food("Late bars", Map.of("category", "bar_cookies_cut_and_wrapped", "roomDays", "14"));
    served.post(
        "/api/v1/lots",
        "{'lot':'L-LATE','food':'Late bars','category':'bar_cookies_cut_and_wrapped'}");
    log("L-LATE", "{'when':'2026-02-05T09:00:00-07:00','entry':'cooked'}");
    log("L-LATE", "{'when':'2026-02-20T09:00:00-07:00','entry':'frozen','how':'hard'}");
    String labels = "/lots/L-LATE/labels.pdf?sheet=a4-8";
    for (String asked : List.of("", "&leaves=yes", "&leaves=yes&posted=2026-04-12")) {
      assertThat(text(labels + asked))
          .contains("PAST ITS BEST QUALITY (about quality, not safety)")
          .doesNotContain("Best quality by", "at its best until", "counted from thawing");
    }
  }

  /**
   * Bars need no cold for safety (FDA Food Code 2022 1-201.10), and posted they thaw on the way:
   * six months in a freezer say nothing of them then. That a kitchen states days of its own is
   * common practice, no source.
   */
  @Test
  void food_that_leaves_the_freezer_bears_no_date_of_the_freezer() throws IOException {
    food("Seed bars", Map.of("category", "bar_cookies_cut_and_wrapped"));
    bars("L-SEED", "Seed bars");
    String labels = "/lots/L-SEED/labels.pdf?sheet=a4-8";
    assertThat(text(labels)).contains("Best quality by Fri 4 Sep 2026");
    assertThat(text(labels + "&leaves=yes"))
        .contains("No date applies: its freezer date holds only in the freezer.")
        .doesNotContain("Sep 2026");
    assertThat(served.get("/lots/L-SEED").text()).contains("your own days at room temperature");
    food("Seed bars", Map.of("category", "bar_cookies_cut_and_wrapped", "roomDays", "5"));
    assertThat(served.get("/lots/L-SEED").text())
        .doesNotContain("your own days at room temperature");
    assertThat(text(labels + "&leaves=yes"))
        .contains("Days at its best at room temperature, counted from thawing: 5")
        .contains("(figure of the kitchen that made it, quality only)", "Posted ____")
        .doesNotContain("Sep 2026", "No date applies", "Frozen Wed 4 Mar");
    assertThat(text(labels)).contains("Frozen Wed 4 Mar").doesNotContain("Posted");
    assertThat(text(labels + "&leaves=yes&posted=2026-03-10"))
        .contains("Posted Tue 10 Mar 2026")
        .contains("At room temperature at its best until Sun 15 Mar 2026 (figure of the kitchen")
        .doesNotContain("counted from thawing", "____");
    assertThat(text(labels + "&leaves=yes&posted=2026-09-10")).contains("PAST ITS BEST QUALITY");
    assertThat(served.get(labels + "&leaves=yes&posted=2020-03-10").text()).contains("is over");
    assertThat(served.get(labels + "&posted=2026-03-10").text())
        .contains("goes with the tick that it leaves");
    assertThat(text(labels + "&leaves=yes&language=es"))
        .contains("se descongela: 5 (cifra de la cocina que lo hizo, solo calidad)");
    log(
        "L-SEED",
        "{'when':'2026-03-06T09:00:00-07:00','entry':'thawing','temperature':'30F',"
            + "'how':'refrigerator'}");
    assertThat(text(labels))
        .contains("At room temperature at its best until Wed 11 Mar 2026 (figure of the kitchen")
        .doesNotContain("Best quality by");
    String page = served.get("/lots/L-SEED").text();
    assertThat(page)
        .contains("At room temperature at its best until Wed 11 Mar (figure of the kitchen")
        .doesNotContain("best quality by");
    food("Seed bars", Map.of("category", "bar_cookies_cut_and_wrapped"));
    String none = "No date applies: its freezer date holds only in the freezer.";
    assertThat(text(labels)).contains(none);
    assertThat(served.get("/lots/L-SEED").text())
        .contains(none)
        .doesNotContain("Frozen: best quality by");
    assertThat(text("/lots/L-SEED/record.pdf")).contains(none).doesNotContain("best quality by");
  }

  /** Soup needs the cold wherever it goes; five days as on its freezer label. */
  @Test
  void food_that_needs_the_cold_leaves_with_keep_frozen() throws IOException {
    food("Leek pot", Map.of("category", "soup_or_stew"));
    cookedAndChilled("L-POST", "Leek pot");
    log("L-POST", "{'when':'2026-03-04T09:00:00-07:00','entry':'frozen','how':'hard'}");
    assertThat(text("/lots/L-POST/labels.pdf?sheet=a4-8&leaves=yes"))
        .contains("KEEP FROZEN until it is used")
        .contains("While it stays frozen: best quality by Mon 4 May 2026")
        .contains("After thawing use within 5 days, thawed on ____");
    assertThat(text("/lots/L-POST/labels.pdf?sheet=a4-8")).doesNotContain("KEEP FROZEN");
    // FDA Food Code 2022 3-501.17, 3-501.18: not past its last day, seven days the first included.
    cookedAndChilled("L-FRESH", "Leek pot");
    String fresh = "/lots/L-FRESH/labels.pdf?sheet=a4-8&leaves=yes&posted=2026-03-";
    assertThat(text(fresh + "07")).contains("Posted Sat 7 Mar 2026", "Discard after");
    Reply late = served.get(fresh + "30");
    assertThat(late.status()).isEqualTo(400);
    assertThat(late.text()).contains("L-FRESH is not to be used after");
  }

  /** 21 CFR 101.7(a): in terms of weight, measure or numerical count. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "12 oz",
        "12 oz (340 g)",
        "Net Wt 12 oz (340 g)",
        "Peso neto: 1,5 kg",
        "6 bars",
        "1/2 lb",
        "NET WT. 1 1/2 LB (680 g)",
        "12 fl. oz. (355 mL)",
        "0.5 l",
        "340g"
      })
  void a_net_quantity_is_a_number_and_its_unit(String net) {
    String asked = "/lots/L-CHILLED/labels.pdf?sheet=a4-8&net=";
    assertThat(served.get(asked + URLEncoder.encode(net, StandardCharsets.UTF_8)).status())
        .isEqualTo(200);
  }

  @ParameterizedTest
  @ValueSource(strings = {"abc", "12", "0 oz", "-5 oz", "oz", "lots of it", "<b>1</b>", "???"})
  void what_is_no_quantity_is_refused_and_leads_back_to_the_form(String net) {
    String given = URLEncoder.encode(net, StandardCharsets.UTF_8);
    Reply refused =
        served.get("/lots/L-CHILLED/labels.pdf?sheet=a4-8&leaves=yes&count=3&net=" + given);
    assertThat(refused.status()).isEqualTo(400);
    assertThat(refused.text()).contains("Write a number and its unit");
    Matcher back =
        Pattern.compile("href=\"(/lots/L-CHILLED[?][^\"]*)#labels\"").matcher(refused.text());
    assertThat(back.find()).isTrue();
    String form = served.get(back.group(1).replace("&amp;", "&")).text();
    assertThat(form)
        .containsPattern("<details id=\"labels\" open")
        .containsPattern("name=\"leaves\" value=\"yes\" checked")
        .containsPattern("id=\"count\"[^>]*value=\"3\"")
        .containsPattern("<option value=\"a4-8\" selected")
        .contains("Blank: the label bears no net quantity.");
  }

  /**
   * Eight portions in threes are two containers of 3 and one of 2. 1 oz = 28.3495 g (NIST SP 811,
   * appendix B.8), so 6 oz are 170.1 g and 4 oz 113.4 g, whatever two rounded ounces were called.
   */
  @Test
  void where_counts_differ_the_net_quantity_is_reckoned_from_that_of_one_portion()
      throws IOException {
    String threes = "/lots/L-CHILLED/labels.pdf?sheet=a4-8&many=portions&each=3&net=";
    Reply refused = served.get(threes + "Net+Wt+6+oz+(170+g)");
    assertThat(refused.status()).isEqualTo(400);
    assertThat(refused.text()).contains("for different portions (3, 2)", "quantity of one portion");
    String text = text(threes + "Net+Wt+2+oz+(57+g)&net-of=portion");
    assertThat(text.split("Net Wt 6 oz \\(170 g\\)", -1)).hasSize(3);
    assertThat(text.split("Net Wt 4 oz \\(113 g\\)", -1)).hasSize(2);
    String fours = "/lots/L-CHILLED/labels.pdf?sheet=a4-8&many=portions&each=4&net=8+oz+(227+g)";
    assertThat(text(fours).split("8 oz \\(227 g\\)", -1)).hasSize(3);
    Reply uncounted = served.get("/lots/L-CHILLED/labels.pdf?count=2&net=2+oz&net-of=portion");
    assertThat(uncounted.status()).isEqualTo(400);
    assertThat(uncounted.text()).contains("how many portions each container holds");
  }

  /** NIST Handbook 44, appendix C: 24 oz are 680.4 g. */
  @Test
  void ounces_that_are_not_the_grams_beside_them_are_refused() {
    String asked = "/lots/L-CHILLED/labels.pdf?sheet=a4-8&net=24+oz+";
    assertThat(served.get(asked + "(6800+g)").text()).contains("more than 5 % apart");
    assertThat(served.get(asked + "(680+g)").status()).isEqualTo(200);
    assertThat(served.get("/lots/L-CHILLED").text())
        .contains("such as Net Wt 12 oz (340 g)", "placeholder=\"Net Wt 12 oz (340 g)\"");
  }

  @Test
  void a_label_speaks_another_language_than_the_page_where_it_is_asked_to() throws IOException {
    assertThat(text("/lots/L-CHILLED/labels.pdf?language=es"))
        .contains("Desechar después del lun 9 mar 2026");
    assertThat(text("/lots/L-CHILLED/labels.pdf?language=en", "Accept-Language", "es"))
        .contains("Discard after Mon 9 Mar 2026");
  }

  /**
   * 21 CFR 101.15(c)(2): a label with words in another language bears all that is asked for in it
   * (the number from memory). The program cannot translate what a kitchen wrote, so it says so.
   */
  @Test
  void what_stays_as_the_kitchen_wrote_it_is_named_beside_the_choice_of_language()
      throws IOException {
    food(
        "Seed bread",
        Map.of(
            "category", "bar_cookies_cut_and_wrapped",
            "ingredients", "wheat flour, water",
            "otherAllergens", "mustard"));
    served.post(
        "/api/v1/lots",
        "{'lot':'L-BREAD','food':'Seed bread','category':'bar_cookies_cut_and_wrapped'}");
    log("L-BREAD", "{'when':'2026-03-06T09:00:00-07:00','entry':'cooked'}");
    assertThat(served.get("/lots/L-BREAD").text())
        .containsSubsequence(
            "name=\"language\"",
            "nothing that this kitchen wrote is translated",
            "the name of the food; allergens that the kitchen named itself; ingredients; the net")
        .doesNotContain("the name of the food; allergens that the kitchen named itself; thawing");
    assertThat(served.get("/lots/L-BREAD", "Accept-Language", "es").text())
        .contains("los alérgenos que nombró la propia cocina; ingredientes; el contenido neto");
    assertThat(text("/lots/L-BREAD/labels.pdf?sheet=letter-10&language=es"))
        .contains("mustard", "wheat flour, water");
  }

  private static void food(String name, Map<String, String> said) {
    Map<String, String> cells = new HashMap<>(said);
    cells.put("name", name);
    served.kitchen().setUp().food(cells);
  }

  /**
   * FDA Food Code 2022 3-501.17(A): at most 7 days at 41 °F or less, the day of preparation counted
   * as Day 1. Made on 3 March, its last day is 9 March. Reheating: 3-403.11(A), 165 °F.
   */
  @ParameterizedTest
  @MethodSource("sheets")
  void a_chilled_lot_is_discarded_after_its_seventh_day(String sheet) throws IOException {
    assertThat(text("/lots/L-CHILLED/labels.pdf?sheet=" + sheet))
        .contains(
            "Barley and leek soup",
            "Discard after Mon 9 Mar 2026",
            "Lot L-CHILLED",
            "Made Tue 3 Mar 2026",
            "Portions: 8",
            "Reheat to 165 °F")
        .doesNotContain("quality", "DISCARD");
  }

  /**
   * FDA Food Code 2022 3-501.17(A) and its Annex 3: freezing stops the count and gives no day back,
   * so no last day can be told while it is frozen. Two of seven days were used by 4 March.
   */
  @ParameterizedTest
  @MethodSource("sheets")
  void a_frozen_lot_has_a_day_of_quality_and_days_once_thawed_but_no_last_day(String sheet)
      throws IOException {
    assertThat(text("/lots/L-FROZEN/labels.pdf?sheet=" + sheet))
        .contains(
            "Best quality by",
            "Days used before freezing: 2",
            "After thawing use within 5 days, thawed on ____",
            "Frozen Wed 4 Mar 2026")
        .doesNotContainIgnoringCase("use by")
        .doesNotContainIgnoringCase("discard");
  }

  /** 2 days used by 4 March, the day of thawing counted: 7 March is day 3, 11 March the last. */
  @Test
  void a_thawed_lot_has_a_last_day_again() throws IOException {
    assertThat(text("/lots/L-THAWED/labels.pdf"))
        .contains("Discard after Wed 11 Mar 2026", "Thawed Sat 7 Mar 2026")
        .doesNotContain("quality");
  }

  /** FDA Food Code 2022 3-501.18(A)(1): discarded once it exceeds the days of 3-501.17(A). */
  @Test
  void what_must_be_discarded_says_so_before_anything_else() throws IOException {
    assertThat(text("/lots/L-PAST/labels.pdf"))
        .contains("DISCARD: its last day, Tue 24 Feb 2026, has passed")
        .doesNotContain("after", "Reheat", "quality");
    assertThat(text("/lots/L-PAST-FROZEN/labels.pdf"))
        .contains("DISCARD: its last day, Tue 24 Feb 2026, had passed before it was frozen")
        .doesNotContain("use within", "Best quality");
    assertThat(text("/lots/L-WARM/labels.pdf"))
        .containsPattern("(DISCARD: a limit was missed|DO NOT SERVE YET)");
    assertThat(text("/lots/L-GONE/labels.pdf"))
        .contains("DISCARDED: do not eat")
        .doesNotContain("after", "Reheat");
  }

  /**
   * FDA Food Code 2022 3-501.14(A): five hours from hot to 99 °F miss 70 °F within two. Frozen all
   * the same, it has dates that a reader could take for leave to use it.
   */
  @Test
  void what_is_owed_stands_without_a_later_date_on_label_page_and_record() throws IOException {
    served.post("/api/v1/lots", "{'lot':'L-OWED','food':'Rice','category':'soup_or_stew'}");
    log("L-OWED", "{'when':'2026-03-06T00:00:00-07:00','entry':'cooked','temperature':'200F'}");
    log("L-OWED", "{'when':'2026-03-06T00:20:00-07:00','entry':'reading','temperature':'130F'}");
    log("L-OWED", "{'when':'2026-03-06T05:00:00-07:00','entry':'reading','temperature':'99F'}");
    log("L-OWED", "{'when':'2026-03-06T06:00:00-07:00','entry':'frozen','how':'hard'}");
    assertThat(text("/lots/L-OWED/labels.pdf?sheet=roll-4x6"))
        .containsPattern("(DISCARD: a limit was missed|DO NOT SERVE YET)")
        .contains("Made Fri 6 Mar 2026", "Frozen Fri 6 Mar 2026")
        .doesNotContain("Best quality", "thawing", "after");
    String none = "No date holds until what is owed is done";
    assertThat(text("/lots/L-OWED/record.pdf")).contains(none).doesNotContain("Best quality");
    assertThat(served.get("/lots/L-OWED").text()).contains(none).doesNotContain("Best quality");
  }

  @Test
  void a_lot_without_entries_has_a_label_without_dates() throws IOException {
    assertThat(text("/lots/L-NEW/labels.pdf")).contains("Bread dough", "Nothing logged yet");
  }

  @Test
  void labels_are_in_the_language_of_the_person() throws IOException {
    assertThat(text("/lots/L-CHILLED/labels.pdf", "Accept-Language", "es"))
        .contains("Desechar después del lun 9 mar 2026", "Recalentar a 165 °F");
    assertThat(text("/lots/L-WARM/labels.pdf", "Accept-Language", "es")).doesNotContain("reheat");
  }

  @Test
  void a_begun_sheet_is_used_up_and_a_new_one_follows() throws IOException {
    String address = "/lots/L-CHILLED/labels.pdf?sheet=letter-10&count=4&from=9";
    try (PDDocument pdf = pdf(address)) {
      assertThat(pdf.getNumberOfPages()).isEqualTo(2);
    }
    assertThat(text(address).split("Lot L-CHILLED", -1)).hasSize(5);
    assertThat(served.get(address).header("Content-Disposition")).startsWith("inline;");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "sheet=none",
        "count=0",
        "count=301",
        "count=x",
        "from=31",
        "from=-1",
        "each=0",
        "each=a",
        "many=all",
        "many=parts",
        "many=portions&count=40",
        "shet=a4-8"
      })
  void what_cannot_be_printed_is_refused(String wrong) {
    Reply reply = served.get("/lots/L-CHILLED/labels.pdf?" + wrong);
    assertThat(reply.status()).isEqualTo(400);
    assertThat(reply.text()).contains("These labels cannot be printed", "<p lang=\"en\">");
    assertThat(served.get("/lots/NOBODY/labels.pdf").status()).isEqualTo(404);
  }

  @Test
  void every_fault_of_what_is_asked_for_is_told_at_once() {
    Reply reply =
        served.get(
            "/lots/L-CHILLED/labels.pdf?sheet=x&count=y&each=z&from=0", "Accept-Language", "es");
    assertThat(reply.text())
        .contains("Hoja o rollo", "Cuántas de cada una", "Porciones en cada envase")
        .contains("Primer lugar libre", "<p lang=\"es\">");
  }

  /** A container says what is in it: never the portions of the whole lot on each of several. */
  @Test
  void portions_are_those_of_one_container() throws IOException {
    String labels = "/lots/L-CHILLED/labels.pdf";
    assertThat(text(labels)).contains("Portions: 8");
    assertThat(text(labels + "?count=4")).doesNotContain("Portions");
    assertThat(text(labels + "?count=4&each=2")).contains("Portions in this container: 2");
    String[] three = text(labels + "?many=portions&each=3").split("Lot L-CHILLED", -1);
    assertThat(three).hasSize(4);
    assertThat(three[3]).contains("Portions in this container: 2");
    assertThat(text(labels + "?many=portions&each=3")).contains("Portions in this container: 3");
    assertThat(text(labels + "?many=portions").split("Lot L-CHILLED", -1)).hasSize(9);
  }

  @Test
  void the_parts_of_a_divided_lot_are_printed_from_its_page() throws IOException {
    cookedAndChilled("L-WHOLE", "Lentil stew");
    for (int i = 1; i <= 12; i++) {
      Reply made =
          served.post(
              "/api/v1/lots",
              "{'lot':'L-PT-%d','food':'Lentil stew','category':'soup_or_stew',".formatted(i)
                  + "'from':['L-WHOLE'],'portions':2}");
      assertThat(made.status()).as(made.text()).isEqualTo(201);
      log("L-PT-" + i, "{'when':'2026-03-04T10:00:00-07:00','entry':'chilled'}");
    }
    String text = text("/lots/L-WHOLE/labels.pdf?many=parts&sheet=letter-10");
    assertThat(text.split("Portions: 2", -1)).hasSize(13);
    assertThat(text).contains("Lot L-PT-1 ", "Lot L-PT-12", "Discard after Mon 9 Mar 2026");
    try (PDDocument pdf = pdf("/lots/L-WHOLE/labels.pdf?many=parts&sheet=letter-10")) {
      assertThat(pdf.getNumberOfPages()).isEqualTo(2);
    }
    assertThat(served.get("/lots/L-WHOLE").text()).contains("each of its parts (12)");
  }

  /** FDA Food Code 2022 3-501.14(A): 70 °F within 2 h of 135 °F, 41 °F within 6 h in all. */
  @ParameterizedTest
  @MethodSource("sheets")
  void a_lot_that_cools_names_its_next_limits_by_the_clock(String sheet) throws IOException {
    String lot = "L-COOL-" + sheet;
    served.post(
        "/api/v1/lots", "{'lot':'%s','food':'Rice','category':'soup_or_stew'}".formatted(lot));
    log(lot, "{'when':'2026-03-07T10:00:00-07:00','entry':'cooked','temperature':'135F'}");
    assertThat(text("/lots/" + lot + "/labels.pdf?sheet=" + sheet))
        .contains("Must reach 70 °F by Sat 7 Mar 2026 12:00")
        .contains("Must reach 41 °F by Sat 7 Mar 2026 16:00");
  }

  /** Times in a freezer are about quality (FoodSafety.gov, Cold Food Storage Chart). */
  @Test
  void a_frozen_lot_past_its_quality_says_so_and_shows_no_day_gone_by() throws IOException {
    cookedAndChilledIn2025("L-OLD-FROZEN");
    assertThat(text("/lots/L-OLD-FROZEN/labels.pdf"))
        .contains("PAST ITS BEST QUALITY (about quality, not safety)", "After thawing use within")
        .doesNotContain("Best quality by");
  }

  private static void cookedAndChilledIn2025(String lot) {
    served.post(
        "/api/v1/lots", "{'lot':'%s','food':'Bean stew','category':'soup_or_stew'}".formatted(lot));
    log(lot, "{'when':'2025-05-05T10:00:00-07:00','entry':'cooked','temperature':'200F'}");
    log(lot, "{'when':'2025-05-05T11:30:00-07:00','entry':'reading','temperature':'69F'}");
    log(lot, "{'when':'2025-05-05T14:00:00-07:00','entry':'chilled','temperature':'40F'}");
    log(lot, "{'when':'2025-05-05T16:00:00-07:00','entry':'frozen','how':'hard'}");
  }

  /** Names that a kitchen, or someone who means it harm, may write. Common practice, no source. */
  @ParameterizedTest
  @MethodSource("sheets")
  void any_name_fits_every_label_and_its_date_stays(String sheet) throws IOException {
    for (int i = 0; i < HOSTILE.size(); i++) {
      assertThat(text("/lots/L-H" + i + "/labels.pdf?sheet=" + sheet))
          .as(HOSTILE.get(i))
          .contains("Discard after Mon 9 Mar 2026", "Lot L-H" + i)
          .doesNotContain("\u202e");
    }
    assertThat(text("/lots/L-H0/labels.pdf?sheet=" + sheet)).contains("<script>");
    assertThat(text("/lots/L-H1/labels.pdf?sheet=" + sheet)).contains("…");
    assertThat(text("/lots/L-H5/labels.pdf?sheet=" + sheet)).contains("Щи с грибами");
  }

  static List<String> sheets() {
    return Sheet.ALL.stream().map(Sheet::key).toList();
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void the_code_on_it_leads_to_the_lot(String sheet) throws IOException {
    assertThat(codes("/lots/L-FROZEN/labels.pdf?sheet=" + sheet))
        .containsExactly(served.address("/lots/L-FROZEN").toString());
  }

  /** What a phone reads on the first page; it looks again from elsewhere where it saw nothing. */
  private static List<String> codes(String address) throws IOException {
    try (PDDocument pdf = pdf(address)) {
      for (int dotsPerInch : new int[] {300, 200, 430}) {
        List<String> read = codes(new PDFRenderer(pdf).renderImageWithDPI(0, dotsPerInch));
        if (!read.isEmpty()) {
          return read;
        }
      }
      return List.of();
    }
  }

  private static List<String> codes(BufferedImage page) {
    int[] pixels = page.getRGB(0, 0, page.getWidth(), page.getHeight(), null, 0, page.getWidth());
    LuminanceSource seen = new RGBLuminanceSource(page.getWidth(), page.getHeight(), pixels);
    try {
      // The reader for one code loses about one address in a hundred on a page, at any size.
      Result[] read =
          new QRCodeMultiReader()
              .decodeMultiple(
                  new BinaryBitmap(new HybridBinarizer(seen)),
                  Map.of(DecodeHintType.TRY_HARDER, true));
      return Stream.of(read).map(Result::getText).toList();
    } catch (NotFoundException none) {
      return List.of();
    }
  }

  /** The page names what each sheet leaves out, and the sheets say no more than that. */
  @Test
  void the_page_of_a_lot_names_what_has_no_room_on_a_sheet() throws IOException {
    food(
        "Oat pot",
        Map.of(
            "category",
            "soup_or_stew",
            "reheating",
            "In a covered pan with a cup of water, stirring all the time, until it steams.",
            "ingredients",
            "water\noats\nleeks\ncarrots\nparsley\nbay\nsalt"));
    served.kitchen().setUp().name(Map.of("name", "Kitchen at the weir"));
    cookedAndChilled("L-FULL", "Oat pot");
    String page = served.get("/lots/L-FULL").text();
    assertThat(page)
        .contains("Roll, 50 × 30 mm: no room for", "reheating words")
        .contains("Roll, 4 × 6 in – all fits");
    assertThat(text("/lots/L-FULL/labels.pdf?sheet=roll-50x30"))
        .contains("Discard after Mon 9 Mar 2026", "Made Tue 3 Mar 2026", "Lot L-FULL")
        .doesNotContain("covered pan");
    assertThat(text("/lots/L-FULL/labels.pdf?sheet=roll-4x6"))
        .contains("Kitchen at the weir", "until it steams.", "bay, salt", "Portions: 8");
    served.kitchen().setUp().name(Map.of());
  }

  /** A least size of 6 points: common practice, no source. */
  @ParameterizedTest
  @MethodSource("sheets")
  void no_letter_is_smaller_than_six_points(String sheet) throws IOException {
    List<Float> sizes = new ArrayList<>();
    PDFTextStripper stripper =
        new PDFTextStripper() {
          @Override
          protected void processTextPosition(TextPosition text) {
            sizes.add(text.getFontSizeInPt());
          }
        };
    try (PDDocument pdf = pdf("/lots/L-FROZEN/labels.pdf?sheet=" + sheet)) {
      stripper.getText(pdf);
    }
    assertThat(sizes).isNotEmpty().allMatch(size -> size >= 6);
  }

  @Test
  void a_long_name_is_wrapped_before_it_is_cut() throws IOException {
    String name = "Roasted parsnip and celeriac soup with crème fraîche and chives";
    cookedAndChilled("L-LONG", name);
    for (String sheet : sheets()) {
      assertThat(text("/lots/L-LONG/labels.pdf?sheet=" + sheet)).as(sheet).contains(name);
    }
    assertThat(served.get("/lots/L-H7").text()).contains("no room for the end of the name");
    assertThat(served.get("/lots/L-LONG").text()).doesNotContain("the end of the name");
  }

  /** U+F1234 is for private use (The Unicode Standard, section 23.5): no font here has it. */
  @ParameterizedTest
  @MethodSource("sheets")
  void a_name_that_cannot_be_printed_says_so_and_names_the_lot(String sheet) throws IOException {
    String lot = "L-BOX-" + sheet;
    cookedAndChilled(lot, "\udb84\ude34 soup");
    assertThat(text("/lots/" + lot + "/labels.pdf?sheet=" + sheet))
        .contains("COULD NOT BE", "Lot " + lot, "Discard after Mon 9 Mar 2026");
    assertThat(text("/lots/L-FROZEN/labels.pdf?sheet=" + sheet)).doesNotContain("COULD NOT BE");
    assertThat(served.get("/lots/" + lot).text())
        .contains("Cannot be printed here, since no font of this computer has it: \udb84\ude34");
    assertThat(served.get("/lots/L-FROZEN").text()).doesNotContain("Cannot be printed here");
  }
}
