package chillwright.logfile;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The columns of a log file, which are also the fields of an entry in a request. */
public enum Column {
  LOT("lot"),
  FOOD("food"),
  CATEGORY("category"),
  WHEN("when"),
  ENTRY("entry"),
  TEMPERATURE("temperature"),
  HOW("how"),
  PLACE("place"),
  AIR("air"),
  PORTIONS("portions"),
  FROM("from"),
  TO("to"),
  UNTIL("until"),
  PROBE("probe"),
  CONTAINER("container"),
  DEPTH("depth"),
  BY("by"),
  NOTE("note"),
  ID("id"),
  CORRECTS("corrects");

  private static final Map<String, Column> BY_TITLE =
      Arrays.stream(values()).collect(Collectors.toMap(Column::title, Function.identity()));

  private final String title;

  Column(String title) {
    this.title = title;
  }

  /** As it stands in the header row. */
  public String title() {
    return title;
  }

  public static Optional<Column> ofTitle(String title) {
    return Optional.ofNullable(BY_TITLE.get(title));
  }

  /** All titles in the order of the format. */
  public static List<String> titles() {
    return Arrays.stream(values()).map(Column::title).toList();
  }
}
