package chillwright.logfile;

import chillwright.core.log.Details;
import chillwright.core.log.EntryId;
import chillwright.core.log.How;
import chillwright.core.log.Incoming;
import chillwright.core.log.LotId;
import chillwright.core.log.Misread;
import chillwright.core.log.Nearest;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.core.measure.Depth;
import chillwright.core.measure.Temperature;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;

/** Reads the cells of one row, and gathers what is wrong with each. */
final class CellReader {
  private static final String CODES_ALLOWED =
      "1 to 64 of the letters A-Z and a-z, digits, '.', '_' and '-'";
  private static final int MOST_PORTIONS = 1_000_000;

  /** Cells that only a lot has: in the reading of a place they show that its lot was left out. */
  private static final Set<Column> OF_LOTS_ONLY =
      EnumSet.of(
          Column.FOOD,
          Column.CATEGORY,
          Column.PORTIONS,
          Column.FROM,
          Column.CONTAINER,
          Column.DEPTH);

  /** Cells that a reading of a lot may tell something in. */
  private static final Set<Column> OF_READINGS =
      EnumSet.of(Column.TEMPERATURE, Column.HOW, Column.AIR);

  private final GivenCells cells;
  private final TimeCells times;

  CellReader(GivenCells cells, long earliest, long latest, TimeExample example) {
    this.cells = cells;
    this.times = new TimeCells(cells, earliest, latest, example);
  }

  Incoming read() {
    Optional<LotId> lot = code(Column.LOT).map(LotId::new);
    Optional<EntryId> id = code(Column.ID).map(EntryId::new);
    Optional<Word> word = word();
    OptionalLong when = times.when();
    Optional<EntryId> corrects = code(Column.CORRECTS).map(EntryId::new);
    Details details = details(word);
    Optional<String> by = text(Column.BY, Cells.LONGEST_TEXT);
    Optional<String> note = text(Column.NOTE, Cells.LONGEST_NOTE);
    checkTogether(word);
    if (!cells.problems().isEmpty()) {
      return new Misread(cells.row(), lot, id, false, cells.problems());
    }
    Instant happened = Instant.ofEpochMilli(when.orElseThrow());
    return new Row(cells.row(), lot, word.orElseThrow(), happened, id, by, note, corrects, details);
  }

  private Details details(Optional<Word> word) {
    return new Details(
        text(Column.FOOD, Cells.LONGEST_TEXT),
        text(Column.CATEGORY, Cells.LONGEST_TEXT),
        temperature(Column.TEMPERATURE),
        how(word),
        text(Column.PLACE, Cells.LONGEST_TEXT),
        temperature(Column.AIR),
        portions(),
        from(),
        text(Column.TO, Cells.LONGEST_TEXT),
        times.until(),
        text(Column.PROBE, Cells.LONGEST_TEXT),
        text(Column.CONTAINER, Cells.LONGEST_CONTAINER),
        depth());
  }

  private Optional<Word> word() {
    String given = cells.given(Column.ENTRY);
    Optional<Word> word = Word.ofText(given);
    if (word.isEmpty()) {
      List<String> words = Arrays.stream(Word.values()).map(Word::text).toList();
      if (given.isEmpty()) {
        cells.refuse(Column.ENTRY, "missing", String.join(", ", words), "Say what happened.");
      } else {
        cells.refuse(
            Column.ENTRY,
            "unknown-entry",
            String.join(", ", words),
            "\"%s\" is no word for an entry.%s"
                .formatted(Texts.shown(given), Nearest.question(given, words)));
      }
    }
    return word;
  }

  private Optional<Temperature> temperature(Column column) {
    if (cells.isBlank(column)) {
      return Optional.empty();
    }
    Optional<Temperature> temperature = Degrees.read(cells.given(column));
    if (temperature.isEmpty()) {
      Degrees.Flaw flaw = Degrees.flaw(cells.given(column));
      cells.refuse(column, flaw.code(), Degrees.ALLOWED, flaw.says());
    }
    return temperature;
  }

  private Optional<Depth> depth() {
    if (cells.isBlank(Column.DEPTH)) {
      return Optional.empty();
    }
    Optional<Depth> depth = Depth.read(cells.given(Column.DEPTH));
    if (depth.isEmpty()) {
      cells.refuse(
          Column.DEPTH,
          "bad-depth",
          Depth.ALLOWED,
          "\"%s\" is no depth of food: write a number and its unit, such as 2in or 5cm."
              .formatted(Texts.shown(cells.given(Column.DEPTH))));
    }
    return depth;
  }

  private Optional<How> how(Optional<Word> word) {
    if (cells.isBlank(Column.HOW)) {
      return Optional.empty();
    }
    Optional<How> how = How.ofText(cells.given(Column.HOW));
    boolean corrects = word.filter(Word.CORRECTION::equals).isPresent();
    if (word.isPresent() && !corrects && how.filter(h -> h.goesWith(word.get())).isEmpty()) {
      refuseHow(word.get());
    } else if (how.isEmpty()) {
      cells.refuse(
          Column.HOW,
          "unknown-how",
          texts(List.of(How.values())),
          "\"%s\" is not one of the ways an entry may name: %s."
              .formatted(Texts.shown(cells.given(Column.HOW)), texts(List.of(How.values()))));
    }
    return how;
  }

  private void refuseHow(Word word) {
    String allowed = texts(How.allowedFor(word));
    cells.refuse(
        Column.HOW,
        "how-not-for-entry",
        allowed.isEmpty() ? "blank" : allowed + ", or blank",
        allowed.isEmpty()
            ? "Leave this cell blank for \"%s\"; put more words in the note.".formatted(word.text())
            : "With \"%s\" goes one of: %s; or leave it blank for the ordinary case."
                .formatted(word.text(), allowed));
  }

  private static String texts(List<How> hows) {
    return hows.stream().map(How::text).collect(Collectors.joining(", "));
  }

  private OptionalInt portions() {
    String given = cells.given(Column.PORTIONS);
    if (given.isEmpty()) {
      return OptionalInt.empty();
    }
    boolean digits = given.length() <= 7 && given.chars().allMatch(c -> c >= '0' && c <= '9');
    int count = digits ? Integer.parseInt(given) : 0;
    if (count < 1 || count > MOST_PORTIONS) {
      cells.refuse(
          Column.PORTIONS,
          "bad-portions",
          "a whole number from 1 to 1000000",
          "Write the number of portions in digits, without sign, dot or comma, from 1 to"
              + " 1000000.");
      return OptionalInt.empty();
    }
    return OptionalInt.of(count);
  }

  private List<LotId> from() {
    if (cells.isBlank(Column.FROM)) {
      return List.of();
    }
    List<LotId> lots = new ArrayList<>();
    for (String code : cells.given(Column.FROM).split("\\s+", -1)) {
      if (!LotId.isCode(code)) {
        refuseCode(Column.FROM, code);
      } else if (lots.contains(new LotId(code))) {
        cells.refuse(
            Column.FROM, "named-twice", "each lot once", "Lot %s is named twice.".formatted(code));
      } else {
        lots.add(new LotId(code));
      }
    }
    return lots;
  }

  private Optional<String> code(Column column) {
    String given = cells.given(column);
    if (given.isEmpty()) {
      return Optional.empty();
    }
    if (!LotId.isCode(given)) {
      refuseCode(column, given);
      return Optional.empty();
    }
    return Optional.of(given);
  }

  private void refuseCode(Column column, String code) {
    String repaired = code.replaceAll("[^A-Za-z0-9._-]+", "-");
    String meant = LotId.isCode(repaired) && !repaired.equals("-") ? " Perhaps " + repaired : "";
    cells.refuse(
        column,
        "bad-code",
        CODES_ALLOWED,
        "\"%s\" cannot be a code: use letters A-Z, digits, '.', '_' and '-', at most 64.%s"
            .formatted(Texts.shown(code), meant.isEmpty() ? "" : meant + "?"));
  }

  private Optional<String> text(Column column, int longest) {
    String given = cells.given(column);
    if (given.isEmpty()) {
      return Optional.empty();
    }
    boolean isNote = column == Column.NOTE;
    String text = Texts.normal(given);
    if (Texts.hasBrokenBytes(text)) {
      cells.refuseBrokenBytes(column);
    } else if (Texts.hasControls(text, isNote)) {
      cells.refuse(
          column,
          "control-character",
          isNote ? "text; line breaks are allowed" : "text of one line",
          "This cell holds a character that cannot be shown"
              + (isNote ? "" : ", or a line break (those go in the note)")
              + ". Take it out. If rows that follow seem to be part of it, a quotation mark is not"
              + " closed.");
    } else if (text.codePointCount(0, text.length()) > longest) {
      cells.refuse(
          column,
          "too-long",
          "at most " + longest + " characters",
          "This text has %d characters; at most %d fit."
              .formatted(text.codePointCount(0, text.length()), longest));
    } else {
      return Optional.of(text);
    }
    return Optional.empty();
  }

  private void checkTogether(Optional<Word> word) {
    boolean corrects = word.filter(Word.CORRECTION::equals).isPresent();
    if (corrects && cells.isBlank(Column.CORRECTS)) {
      cells.refuse(
          Column.CORRECTS,
          "missing",
          "the id of an entry",
          "Name the entry that is corrected, by its id.");
    }
    if (word.isPresent() && !corrects && !cells.isBlank(Column.CORRECTS)) {
      cells.refuse(
          Column.CORRECTS,
          "only-in-correction",
          "blank",
          "Only a row with the entry word \"correction\" names an entry to correct.");
    }
    if (corrects && cells.isBlank(Column.NOTE)) {
      cells.refuse(
          Column.NOTE,
          "missing",
          "the reason, in words",
          "Give the reason of the correction in the note, such as \"read off the pot beside it\".");
    }
    if (isNotInUse() && !cells.isBlank(Column.LOT)) {
      cells.refuse(
          Column.HOW,
          "how-of-place",
          "blank, or no lot",
          "\"not-in-use\" is said of a place: name the place, and no lot.");
    } else if (isNotInUse() && !cells.isBlank(Column.TEMPERATURE)) {
      cells.refuse(
          Column.TEMPERATURE,
          "read-not-in-use",
          "blank",
          "What is read is in use: log the reading, or that it is not in use.");
    } else if (cells.isBlank(Column.LOT)) {
      checkWithoutLot(word);
    } else if (word.filter(Word.READING::equals).isPresent()) {
      checkReading();
    } else if (word.filter(Word.MOVED::equals).isPresent() && cells.isBlank(Column.PLACE)) {
      cells.refuse(
          Column.PLACE, "missing", "the name of the place it was moved to", "Name the new place.");
    }
  }

  /** A reading that shows nothing would count as a look at the food. */
  private void checkReading() {
    if (OF_READINGS.stream().allMatch(cells::isBlank)) {
      cells.refuse(
          Column.TEMPERATURE,
          "reading-empty",
          Degrees.ALLOWED + "; or in how hard, crystals or soft; or in air the surroundings",
          "This reading tells nothing. Fill in what was read, or write an \"action\" with a note if"
              + " nothing was measured.");
    }
  }

  private boolean isNotInUse() {
    return cells.given(Column.HOW).equals(How.NOT_IN_USE.text());
  }

  /**
   * A reading of a place needs no lot, nor does what was done about it, nor a correction; every
   * other row does.
   */
  private void checkWithoutLot(Optional<Word> word) {
    boolean reading = word.filter(Word.READING::equals).isPresent();
    boolean corrects = word.filter(Word.CORRECTION::equals).isPresent();
    boolean acts = word.filter(Word.ACTION::equals).isPresent() && !cells.isBlank(Column.PLACE);
    boolean namesLotCells = OF_LOTS_ONLY.stream().anyMatch(column -> !cells.isBlank(column));
    if (namesLotCells || (word.isPresent() && !reading && !corrects && !acts)) {
      cells.refuse(Column.LOT, "missing", CODES_ALLOWED, "Name the lot that this row is about.");
    } else if (reading && cells.isBlank(Column.PLACE)) {
      cells.refuse(
          Column.PLACE,
          "missing",
          "the name of a refrigerator, freezer, hot-holding unit or counter",
          "A reading without a lot is a reading of a place: name the lot or the place.");
    } else if (reading && cells.isBlank(Column.TEMPERATURE)) {
      cells.refuse(
          Column.TEMPERATURE,
          "missing",
          Degrees.ALLOWED,
          "The reading of a place needs a" + " temperature.");
    } else if (acts && cells.isBlank(Column.NOTE) && !isNotInUse()) {
      cells.refuse(Column.NOTE, "missing", "what was done, in words", "Say what was done.");
    } else if (word.isEmpty() && cells.isBlank(Column.PLACE)) {
      cells.refuse(Column.LOT, "missing", CODES_ALLOWED, "Name the lot that this row is about.");
    }
  }
}
