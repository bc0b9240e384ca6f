package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chillwright.web.Served.Reply;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What stands on the sheet of a plan, read back from the PDF. */
class PlanPdfTest {
  @TempDir static Path folder;

  private static Served served;

  @BeforeAll
  static void serve() {
    served = Served.in(folder);
    StringBuilder dishes = new StringBuilder();
    for (int i = 0; i < 9; i++) {
      dishes.append(
          """
            - dish: "Leek soup %d with a long name that has to be broken into several lines"
              category: soup_or_stew
              portions: 60
              ingredients: [{name: leeks, amount: 1.5, unit: kg}]
              portionFluidOunces: 8
              route: frozen
              thawHours: 24
              make: [{step: simmer, minutes: 60, uses: {hob: 1, hands: 1}}]
              finish: [{step: reheat, minutes: 60, uses: {hob: 1}}]
          """
              .formatted(i));
    }
    served
        .kitchen()
        .plans()
        .save(
            "supper-12",
            """
            name: Harvest supper
            serving: 2026-03-20T18:00:00Z
            zone: UTC
            kitchen: {has: {hob: 12, hands: 9}}
            dishes:
            """
                + dishes);
  }

  @AfterAll
  static void stop() {
    served.close();
  }

  private static PDDocument pdf(String query, String... headers) throws IOException {
    Reply reply = served.get("/plans/supper-12/sheet.pdf" + query, headers);
    assertThat(reply.status()).as(reply.text()).isEqualTo(200);
    assertThat(reply.header("Content-Type")).startsWith("application/pdf");
    return Loader.loadPDF(reply.response().body());
  }

  private static String text(PDDocument pdf) throws IOException {
    PDFTextStripper stripper = new PDFTextStripper();
    stripper.setSortByPosition(true);
    return stripper.getText(pdf).replaceAll("\\s+", " ");
  }

  /** Reheated within two hours: FDA Food Code 2022 3-403.11(D); seven days: 3-501.17. */
  @Test
  void the_sheet_tells_days_steps_and_the_rule_behind_each_bound() throws IOException {
    try (PDDocument pdf = pdf("")) {
      assertThat(text(pdf))
          .contains("Harvest supper", "On the table at Fri 20 Mar 2026 18:00 (UTC)")
          .contains("Thu 19 Mar", "Fri 20 Mar", "17:00 - 18:00", "reheat", "hob 1")
          .contains("3-403.11", "3-501.17", "60 portions are 15 quarts: 3 of the pan")
          .contains("To buy for the week of Mon 16 Mar (2026-W12)", "kg leeks (Leek soup 0");
    }
  }

  /** Nine dishes, each reason once: our own rule for the sheet, no source. */
  @Test
  void each_reason_stands_once() throws IOException {
    try (PDDocument pdf = pdf("")) {
      String text = text(pdf);
      for (String of :
          List.of(
              "begin to make it", "into the freezer", "out of the freezer", "begin to reheat")) {
        assertThat(text.split("several lines: " + of, -1)).as(of).hasSize(1 + 9);
      }
      // 3-501.14(A)(1) and (2) are two limits.
      assertThat(text.split("several lines: while it cools", -1)).hasSize(1 + 2 * 9);
    }
  }

  @Test
  void every_page_has_its_number_and_the_caution() throws IOException {
    try (PDDocument pdf = pdf("?paper=a4")) {
      int pages = pdf.getNumberOfPages();
      assertThat(pages).isGreaterThan(1);
      for (int page = 1; page <= pages; page++) {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        assertThat(stripper.getText(pdf))
            .contains(page + " / " + pages)
            .contains("A plan is reckoned, not measured");
      }
      assertThat(pdf.getPage(0).getMediaBox().getHeight()).isCloseTo(841.9f, within(0.1f));
    }
  }

  @Test
  void in_spanish_too_and_no_other_paper() throws IOException {
    try (PDDocument pdf = pdf("", "Accept-Language", "es")) {
      assertThat(text(pdf))
          .contains("vie 20 mar", "sacar del congelador", "fuego 1", "60 porciones");
    }
    assertThat(served.get("/plans/supper-12/sheet.pdf?paper=a5").status()).isEqualTo(400);
    assertThat(served.get("/plans/no-such/sheet.pdf").status()).isEqualTo(404);
  }
}
