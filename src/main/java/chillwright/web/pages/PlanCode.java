package chillwright.web.pages;

import java.text.Normalizer;
import java.util.Collection;
import java.util.Locale;

/** The short name of a plan in addresses, made of what the event is called. */
final class PlanCode {
  private static final int LONGEST = 40;

  private PlanCode() {}

  /** Plain letters and digits of the name, with a number where that is taken. */
  static String of(String name, Collection<String> taken) {
    String plain =
        Normalizer.normalize(name, Normalizer.Form.NFD)
            .replaceAll("\\p{M}", "")
            .toLowerCase(Locale.ROOT)
            .replaceAll("[^a-z0-9]+", "-")
            .replaceAll("^-|-$", "");
    String cut = plain.length() > LONGEST ? plain.substring(0, LONGEST) : plain;
    String code = cut.isEmpty() ? "plan" : cut;
    String free = code;
    for (int number = 2; taken.contains(free); number++) {
      free = code + "-" + number;
    }
    return free;
  }
}
