package chillwright.web;

import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.log.Category;
import chillwright.core.log.Phase;
import chillwright.core.rules.Verdict;
import chillwright.print.KeepText;
import chillwright.service.Kitchen;
import chillwright.service.LotQuery;
import chillwright.service.Page;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * The part of the page that tells what to use first. Of a frozen lot it gives both answers, the day
 * it is at its best until and the days it has once thawed, and never one "use by".
 */
record OnHand(Kitchen kitchen, Instant now) {
  private static final String NONE = "Nothing is on hand that may be used as it is.";

  String useFirst() {
    LotQuery query = LotQuery.ALL.in(LotOrder.USE_FIRST);
    Page<LotState> lots = kitchen.lots().list(query, Page.Wanted.first(HomePage.SHOWN));
    List<String> items = lots.items().stream().filter(this::mayBeUsed).map(this::item).toList();
    String list = HomePage.list(items, lots.next().isPresent(), NONE);
    return "<p>By last day; then frozen food by the day it is at its best until. Readings of a"
        + " refrigerator or freezer are shown with its lots and give no verdict on the food.</p>"
        + list;
  }

  /** What is out, or calls for a hand, stands above and is not offered for use. */
  private boolean mayBeUsed(LotState lot) {
    boolean isOwed =
        lot.standing().flatMap(Standing::owedFrom).filter(from -> !now.isBefore(from)).isPresent();
    boolean isOut =
        lot.standing()
            .flatMap(standing -> standing.verdicts().at(now))
            .filter(Verdict.OUT::equals)
            .isPresent();
    return !isOwed && !isOut;
  }

  private String item(LotState lot) {
    String where = lot.standing().map(OnHand::where).orElse("nothing logged yet");
    StringBuilder item = new StringBuilder("<li>").append(HomePage.named(lot));
    item.append("<p>").append(Html.words(where)).append("</p>");
    says(lot).forEach(line -> item.append("<p>").append(Html.words(line)).append("</p>"));
    return item.append("</li>").toString();
  }

  private static String where(Standing standing) {
    String phase = standing.phase().word();
    return standing.place().map(place -> phase + ", " + place).orElse(phase);
  }

  /** The dates that count where the lot is now; of food that thawed its quality dates do not. */
  private List<String> says(LotState lot) {
    Optional<Category> category = kitchen.library().keepingList().category(lot.category());
    Optional<Keeping> dates = lot.standing().map(Standing::keeping);
    boolean isFrozen = lot.standing().filter(s -> s.phase() == Phase.FROZEN).isPresent();
    return category
        .flatMap(kind -> dates.map(keeping -> new KeepText(kind, keeping, kitchen.zone(), now)))
        .map(text -> isFrozen ? text.says() : text.saysOfSafety())
        .orElse(List.of());
  }
}
