package chillwright.web.pages;

import chillwright.core.kitchen.LabelsMade;
import chillwright.core.log.How;
import chillwright.core.log.LotId;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.service.LotView;
import java.util.List;
import java.util.Optional;

/**
 * The question before portions go out with labels that do not name an allergen which the food names
 * now. Only the last labels count: who made new ones is taken to have put them on.
 */
record LabelDoubt(Desk desk, Visitor visitor) {
  /** Empty where nothing is to be asked, as of a lot without labels on record. */
  Optional<Question> before(Row row, LotView view) {
    return isTaken(row)
        ? desk.kitchen().labels().onBoxes(view.state()).last(row.when()).stream()
            .flatMap(made -> question(made, view).stream())
            .findFirst()
        : Optional.empty();
  }

  /** What is found missing, or goes into another lot, is no box with a label. */
  private boolean isTaken(Row row) {
    boolean isIntoLot =
        row.details()
            .to()
            .filter(LotId::isCode)
            .flatMap(to -> desk.kitchen().lots().state(new LotId(to)))
            .isPresent();
    boolean isCounted = row.details().how().filter(how -> how == How.COUNTED).isPresent();
    boolean isGiven = row.word() == Word.PORTIONS || row.word() == Word.SERVED;
    return isGiven && !isCounted && !isIntoLot;
  }

  private Optional<Question> question(LabelsMade made, LotView view) {
    LabelsMade.Unnamed unnamed = made.unnamed(view.contents());
    if (unnamed.isNothing()) {
      return Optional.empty();
    }
    String lot = view.state().lot().text();
    List<String> names = ContentsText.names(visitor, unnamed.allergens(), unnamed.others());
    String time = desk.moment(made.at(), visitor);
    String says = visitor.say("entry.doubt.labels", lot, time, String.join(", ", names));
    return Optional.of(
        Question.of("labels", lot + ":" + made.at().toEpochMilli() + ":" + names, says)
            .with(new Choice(LabelsForm.opened(lot), visitor.say("entry.doubt.labels.way"))));
  }
}
