package chillwright.core.plan;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.plan.Shopping.Week;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Numbers of weeks as ISO 8601 has them, as the command date of POSIX prints them with %G-W%V: the
 * first week of a year is that of its first Thursday.
 */
class ShoppingTest {
  @ParameterizedTest
  @CsvSource({
    "1985-04-08, 1985-W15",
    "2008-12-29, 2009-W01",
    "2009-12-28, 2009-W53",
    "2025-12-29, 2026-W01",
    "2026-12-07, 2026-W50",
    "2026-12-28, 2026-W53",
    "2027-01-04, 2027-W01"
  })
  void a_week_has_the_number_of_its_thursday(LocalDate monday, String iso) {
    assertThat(new Week(monday, List.of()).iso()).isEqualTo(iso);
  }
}
