package chillwright.core.kitchen;

import java.util.Objects;
import java.util.Optional;

/** Somebody who works here, by the initials that stand beside what they wrote. */
public record Person(String initials, Optional<String> name) {
  public Person {
    Objects.requireNonNull(initials, "initials");
    Objects.requireNonNull(name, "name");
  }
}
