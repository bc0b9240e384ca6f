package chillwright.web.pages;

import chillwright.core.log.Incoming;
import chillwright.core.log.Word;
import chillwright.service.OnceKey;
import chillwright.service.Refused;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The round as one form with a field for each place: every figure in it is saved, or asked about,
 * by itself, so that a doubt about one loses none of the others.
 */
final class RoundForm {
  private static final String PLACE = "place";
  private static final String TEMPERATURE = "temperature";
  private static final String BY = "by";

  private final Desk desk;
  private final Visitor visitor;
  private final Form form;
  private final List<String> saved = new ArrayList<>();
  private final Map<String, Filled> open = new LinkedHashMap<>();
  private Form last;

  RoundForm(Desk desk, Visitor visitor, Form form) {
    this.desk = desk;
    this.visitor = visitor;
    this.form = form;
    this.last = form;
  }

  /** Whether a form has the fields of several places. */
  static boolean isIn(Form form) {
    return form.text("entry").equals(Word.READING.text()) && form.values(PLACE).size() > 1;
  }

  /** Saves what can be saved. */
  void take() {
    List<String> places = form.values(PLACE);
    for (int i = 0; i < places.size(); i++) {
      Form one = one(i, places.get(i));
      if (one.has(TEMPERATURE)) {
        take(places.get(i), one);
      }
    }
  }

  /** What a form of that place alone would send. */
  private Form one(int index, String place) {
    Form one =
        form.with(PLACE, place).with(TEMPERATURE, nth(TEMPERATURE, index)).with(BY, nth(BY, index));
    boolean isKept = form.text("kept-of").equals(place);
    return isKept ? one : one.without("when").without("kept");
  }

  private String nth(String field, int index) {
    List<String> values = form.values(field);
    return index < values.size() ? values.get(index) : "";
  }

  private void take(String place, Form one) {
    EntryForm entry = new EntryForm(one, desk.zone(), desk.kitchen().now());
    Incoming row = entry.row("");
    List<String> faults = EntryForm.faults(row, visitor);
    List<Question> asked =
        faults.isEmpty() ? RoundDoubt.asked(place, row, desk, visitor) : List.of();
    if (faults.isEmpty() && !Question.isOpen(asked, form.answered())) {
      try {
        desk.kitchen().logbook().log(List.of(row), once(one));
        saved.add(place);
        last = one;
        return;
      } catch (Refused refused) {
        faults = EntryForm.faults(refused.problems(), desk, visitor);
      }
    }
    open.put(place, new Filled(one.all(), faults, asked, form.answered()));
  }

  /** A key for each place, which does not change with what is typed at another. */
  private Optional<OnceKey> once(Form one) {
    if (!form.has("once")) {
      return Optional.empty();
    }
    List<String> sent =
        List.of(one.text(PLACE), one.text(TEMPERATURE), one.text(BY), one.text("when"));
    String key = form.text("once") + ":" + DayView.at(one.text(PLACE));
    byte[] body = sent.toString().getBytes(StandardCharsets.UTF_8);
    return Optional.of(OnceKey.of(key, "POST " + DayPage.READINGS, body));
  }

  /** Places whose figures were saved, that of the button that was touched last. */
  List<String> saved() {
    String touched = form.text("touched");
    List<String> last = new ArrayList<>(saved);
    if (last.remove(touched)) {
      last.add(touched);
    }
    return last;
  }

  /** The same with those that a script saved before it sent the others. */
  Set<String> told() {
    Set<String> told = new HashSet<>(form.values("was-saved"));
    told.addAll(saved);
    return told;
  }

  /** The one that was saved last, with the initials to be offered again. */
  Form last() {
    return last;
  }

  /** Whether nothing is left to be asked or mended. */
  boolean isDone() {
    return open.isEmpty() && !saved.isEmpty();
  }

  /** What was not saved, by its place. */
  Map<String, Filled> open() {
    return open;
  }

  /** The page's form with all that was not saved; nothing at all is a fault. */
  Filled again() {
    List<String> faults = new ArrayList<>();
    List<Question> asked = new ArrayList<>();
    open.forEach(
        (place, one) -> {
          one.faults().forEach(fault -> faults.add(place + ": " + fault));
          asked.addAll(one.asked());
        });
    if (open.isEmpty()) {
      faults.add(visitor.say("day.round.blank"));
    }
    return new Filled(Map.of("form", DayPage.READINGS), faults, asked, form.answered());
  }
}
