package chillwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.plan.Moved;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleLibrary;
import chillwright.service.Kitchen;
import chillwright.service.Opening;
import chillwright.service.Plans.Planned;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The event of the demo, at whatever hour somebody starts it. */
class DemoPlanTest {
  private static final ZoneId ZONE = ZoneId.of("America/Denver");

  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"2026-11-24T14:00:00-07:00", "2027-02-10T03:03:07-07:00"})
  void the_evening_is_two_weeks_ahead_and_its_plan_follows_the_log(String now) throws BrokenRules {
    Instant at = OffsetDateTime.parse(now).toInstant();
    Opening opening =
        new Opening(
            folder.resolve("demo.db"),
            Optional.of(ZONE),
            Optional.empty(),
            ZONE,
            RuleLibrary.load(Optional.empty()),
            () -> at);
    try (Kitchen kitchen = Kitchen.open(opening)) {
      kitchen.logbook().log(DemoLog.until(at), Optional.empty());
      DemoPlan.load(kitchen);
      Planned planned = kitchen.plans().coming().get(0);
      assertThat(planned.menu().serving().atZone(ZONE).toLocalDateTime())
          .isEqualTo(at.atZone(ZONE).toLocalDate().plusDays(14).atTime(18, 30));
      assertThat(planned.plan().isFound()).isTrue();
      assertThat(planned.menu().progress()).containsOnlyKeys("Ridge bean chili");
      assertThat(planned.moved()).extracting(Moved::why).containsOnly(Moved.Why.BEGUN);
    }
  }
}
