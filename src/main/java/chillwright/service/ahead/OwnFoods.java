package chillwright.service.ahead;

import chillwright.core.kitchen.KnownFood;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** What a kitchen knows of its own foods, for questions that bear on one of them. */
public interface OwnFoods {
  /**
   * Portions in the freezer.
   *
   * @param lots how many lots were counted
   * @param uncounted how many lots of them have no count
   * @param isAll false where there are more lots than are looked at
   */
  record Stock(long portions, int lots, int uncounted, boolean isAll) {}

  /** The foods on file, by name. */
  List<String> names();

  /** The food on file by that name. */
  Optional<KnownFood> food(String name);

  /** What is in the freezer of that food and at its best on that day, with nothing against it. */
  Stock frozen(String food, LocalDate goodOn);
}
