package chillwright.web.pages;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.measure.Temperature.Scale;
import chillwright.print.Language;
import chillwright.service.AllergenAsked;
import chillwright.service.Recall;
import chillwright.service.Tracing.Trace;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A table that leaves lots out says so itself: our own design, no source. */
class TraceTableTest {
  private static Table table(TraceAsked asked, Language language) {
    Visitor visitor = new Visitor(language, Scale.CELSIUS, "", "");
    return new TraceTable(ZoneOffset.UTC, visitor).of(asked);
  }

  private static TraceAsked food(boolean isCut) {
    Trace trace = new Trace(List.of(), isCut, List.of());
    Map<String, String> given = Map.of(TraceAsked.FOOD, "Rice");
    return new TraceAsked(given, Optional.of(trace), Optional.empty(), List.of());
  }

  private static TraceAsked allergen(boolean isCut) {
    Recall recall = new Recall(AllergenAsked.of("milk"), List.of(), List.of(), List.of(), isCut);
    Map<String, String> given = Map.of(TraceAsked.ALLERGEN, "milk");
    return new TraceAsked(given, Optional.empty(), Optional.of(recall), List.of());
  }

  @ParameterizedTest
  @EnumSource(Language.class)
  void the_last_row_tells_that_there_may_be_more(Language language) {
    for (TraceAsked asked : List.of(food(true), allergen(true))) {
      Table cut = table(asked, language);
      assertThat(cut.rows()).hasSize(1);
      List<String> row = cut.rows().get(0);
      assertThat(row).hasSameSizeAs(cut.header());
      assertThat(row.get(cut.header().indexOf("row"))).isEqualTo("cut");
      assertThat(row.get(cut.header().indexOf("note"))).contains("20");
      assertThat(row).filteredOn(cell -> !cell.isEmpty()).hasSize(2);
    }
    assertThat(table(food(false), language).rows()).isEmpty();
    assertThat(table(allergen(false), language).rows()).isEmpty();
  }
}
