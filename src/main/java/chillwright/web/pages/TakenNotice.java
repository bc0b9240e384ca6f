package chillwright.web.pages;

import chillwright.core.log.Corrections;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Word;
import chillwright.service.LotView;
import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Tells on a list what was just taken out of a lot, for whom, and what is left there. */
final class TakenNotice {
  static final String TAKEN = "taken";

  private TakenNotice() {}

  /** The address of a list that is to tell it; of anything else than portions it tells nothing. */
  static String on(String list, String lot, LogEntry entry) {
    return entry.word() == Word.PORTIONS
        ? list
            + (list.contains("?") ? "&" : "?")
            + TAKEN
            + "="
            + URLEncoder.encode(lot + " " + entry.id(), StandardCharsets.UTF_8)
        : list;
  }

  /** As the record has it now, whatever the address says. */
  static Optional<Frame.Notice> of(Context context, Desk desk, Visitor visitor) {
    String[] asked = Optional.ofNullable(context.queryParam(TAKEN)).orElse("").split(" ", -1);
    if (asked.length != 2 || !LotId.isCode(asked[0])) {
      return Optional.empty();
    }
    Optional<LotView> view = desk.kitchen().lots().lot(new LotId(asked[0]));
    return view.flatMap(
        lot ->
            lot.entries().stream()
                .filter(entry -> entry.id().text().equals(asked[1]))
                .filter(entry -> entry.word() == Word.PORTIONS)
                .flatMap(entry -> Corrections.standing(entry, lot.entries()).stream())
                .findFirst()
                .map(entry -> notice(lot, entry, visitor)));
  }

  private static Frame.Notice notice(LotView lot, LogEntry entry, Visitor visitor) {
    List<String> says = new ArrayList<>();
    String food = Isolated.of(lot.state().food());
    String count =
        entry.details().portions().stream().mapToObj(Integer::toString).findFirst().orElse("-");
    says.add(
        entry
            .details()
            .to()
            .map(to -> visitor.say("lots.taken.to", count, food, Isolated.of(to)))
            .orElseGet(() -> visitor.say("lots.taken", count, food)));
    lot.state().portions().left().ifPresent(left -> says.add(visitor.say("lots.taken.left", left)));
    String code = lot.state().lot().text();
    return new Frame.Notice(
        String.join(" ", says),
        List.of(code),
        Optional.of("/lots/" + code + "/correct?entry=" + entry.id()));
  }
}
