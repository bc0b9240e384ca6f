package chillwright.core.keeping;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.heat.LifeModel;
import org.junit.jupiter.api.Test;

class RoomLifeTest {
  /** Tsironi et al. 2009, frozen shrimp: measured lives go up to -5 °C, 23 °F. */
  @Test
  void what_thaws_here_is_what_the_lives_of_frozen_food_no_longer_tell_of() {
    assertThat(RoomLife.WARMEST).isEqualTo(LifeModel.WARMEST).isEqualTo((23 - 32) / 1.8);
  }
}
