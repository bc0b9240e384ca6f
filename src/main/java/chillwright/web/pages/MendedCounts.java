package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.log.CountedPart.Count;
import chillwright.core.log.LotId;
import chillwright.service.Lots;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * How the counts are corrected where more was found than the log says, as the form chose it.
 *
 * @param counts none where the form is wrong
 * @param note why, as it stays beside each correction
 * @param givers codes of parts whose portions these are
 * @param next the page that tells it
 */
record MendedCounts(
    List<Count> counts, String note, Set<String> faults, Set<String> givers, String next) {
  /** Before the code of a part, the field with how many were written for it. */
  static final String OF = "of-";

  /** What the log said when it was counted, so that no count is corrected a second time. */
  private static final String LEFT = "left";

  static MendedCounts of(Lots lots, Form form, LotState state, Visitor visitor) {
    LotId lot = state.lot();
    String left = Integer.toString(CountedMore.left(state));
    if (form.has(LEFT) && !form.text(LEFT).equals(left)) {
      return wrong(visitor.say("share.more-counted.changed", form.text(LEFT), left), lot);
    }
    String given = form.text(CountedMore.MORE);
    int more = given.matches("\\d{1,7}") ? Integer.parseInt(given) : 0;
    if (form.text("way").equals(CountedMore.PARTS)) {
      return ofParts(lots, form, lot, more, visitor);
    }
    List<Count> counts = lots.countsOf(lot, more, form.text("way").equals(CountedMore.MADE));
    return new MendedCounts(
        counts,
        visitor.say("share.more-counted.note"),
        counts.isEmpty() ? Set.of(visitor.say("share.more-counted.not")) : Set.of(),
        Set.of(),
        CountedMore.mended(lot));
  }

  private static MendedCounts ofParts(Lots lots, Form form, LotId lot, int more, Visitor visitor) {
    Map<LotId, Integer> fewer = new LinkedHashMap<>();
    boolean isWrong = false;
    for (Map.Entry<String, String> field : form.all().entrySet()) {
      String code = field.getKey().replaceFirst("^" + OF, "");
      if (!field.getKey().startsWith(OF) || field.getValue().isEmpty()) {
        continue;
      }
      isWrong |= !LotId.isCode(code) || !field.getValue().matches("[1-9]\\d{0,5}");
      if (!isWrong) {
        fewer.put(new LotId(code), Integer.parseInt(field.getValue()));
      }
    }
    int sum = fewer.values().stream().mapToInt(Integer::intValue).sum();
    if (isWrong || sum < 1 || sum > more) {
      return wrong(visitor.say("share.more-counted.from-wrong", more), lot);
    }
    List<Count> counts = lots.countsFrom(lot, fewer);
    Set<String> givers = fewer.keySet().stream().map(LotId::text).collect(Collectors.toSet());
    String from = givers.stream().sorted().collect(Collectors.joining(", "));
    return counts.isEmpty()
        ? wrong(visitor.say("share.more-counted.not"), lot)
        : new MendedCounts(
            counts,
            visitor.say("share.more-counted.from-note", sum, from, lot.text()),
            Set.of(),
            givers,
            sum == more ? CountedMore.mended(lot) : CountedMore.on("/lots/" + lot, more - sum));
  }

  private static MendedCounts wrong(String fault, LotId lot) {
    return new MendedCounts(List.of(), "", Set.of(fault), Set.of(), CountedMore.mended(lot));
  }
}
