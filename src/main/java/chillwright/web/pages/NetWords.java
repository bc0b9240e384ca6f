package chillwright.web.pages;

import chillwright.core.portions.NetQuantity;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * The net quantity on the labels of one print. Where they bear different counts one quantity cannot
 * be right on all of them, so that of one portion is asked for and reckoned up for each.
 *
 * @param given as it was entered; empty where the labels are to bear none, or it was refused
 * @param isOfPortion whether it is that of one portion
 */
record NetWords(Optional<NetQuantity> given, boolean isOfPortion) {
  static final String OF = "net-of";
  static final String PORTION = "portion";

  /** What a net quantity takes: "Net Wt 12 oz (340 g)" and a little more. */
  private static final int LONGEST = 60;

  /** So many counts are named in a refusal. */
  private static final int NAMED = 8;

  /**
   * Reads both fields, with every fault of them.
   *
   * @param counts the portions under each label; empty where they are not known
   */
  static NetWords of(Parameters parameters, Visitor visitor, List<OptionalInt> counts) {
    boolean ofPortion = parameters.choice(OF, List.of(PORTION), "").equals(PORTION);
    Optional<String> text = parameters.text("net", LONGEST).filter(net -> net.length() <= LONGEST);
    Optional<NetQuantity> net = text.flatMap(NetQuantity::read);
    if (text.isPresent() && net.isEmpty()) {
      parameters.refuse(visitor.say("labels.net.wrong", text.get()));
    }
    if (net.filter(quantity -> !quantity.agrees()).isPresent()) {
      parameters.refuse(visitor.say("labels.net.disagrees", text.orElse("")));
    }
    if (net.isPresent() && ofPortion && counts.stream().anyMatch(OptionalInt::isEmpty)) {
      parameters.refuse(visitor.say("labels.net.uncounted", text.orElse("")));
    }
    if (net.isPresent() && !ofPortion && counts.stream().distinct().count() > 1) {
      parameters.refuse(visitor.say("labels.net.differ", text.orElse(""), named(counts, visitor)));
    }
    return new NetWords(net, ofPortion);
  }

  private static String named(List<OptionalInt> counts, Visitor visitor) {
    return counts.stream()
        .distinct()
        .limit(NAMED)
        .map(
            count ->
                count.isPresent()
                    ? Integer.toString(count.getAsInt())
                    : visitor.say("labels.net.unknown"))
        .collect(Collectors.joining(", "));
  }

  /** What a label over so many portions bears. */
  Optional<String> over(OptionalInt portions) {
    return given
        .map(net -> isOfPortion ? net.times(portions.orElse(1)) : net)
        .map(NetQuantity::text);
  }
}
