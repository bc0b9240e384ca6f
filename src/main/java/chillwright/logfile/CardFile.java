package chillwright.logfile;

import chillwright.core.log.Nearest;
import chillwright.core.log.Problem;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A file that describes things, such as the foods of a kitchen, a row each: CSV in UTF-8 whose
 * first row names the cells, in any order. Its first cell names the thing.
 */
public final class CardFile {
  private static final int LONGEST_CELL = 65_536;

  private final String file;
  private final List<String> columns;
  private final List<CardCells> cards = new ArrayList<>();
  private final List<Problem> problems = new ArrayList<>();
  private final Set<String> named = new HashSet<>();
  private Optional<List<String>> header = Optional.empty();

  private CardFile(String file, List<String> columns) {
    this.file = file;
    this.columns = columns;
  }

  /**
   * Reads a file whole.
   *
   * @param columns that it may have; the first of them it must have
   */
  public static CardFile read(LogFile file, List<String> columns) throws IOException {
    try (InputStream bytes = Files.newInputStream(file.path())) {
      return read(file.name(), bytes, columns);
    }
  }

  /**
   * Reads a file whole, wherever it lies.
   *
   * @param name as faults will show it
   * @param columns that it may have; the first of them it must have
   */
  public static CardFile read(String name, InputStream in, List<String> columns)
      throws IOException {
    CardFile cards = new CardFile(name, List.copyOf(columns));
    try (BufferedInputStream bytes = new BufferedInputStream(in)) {
      if (CsvLog.skipByteOrderMark(bytes)) {
        cards.refuse(1, "", "not-utf-8", "UTF-16", "Save this file as \"CSV UTF-8\".");
      } else {
        cards.read(CsvLog.utf8(bytes));
      }
    }
    return cards;
  }

  /** One for each row, whatever is wrong with the file. */
  public List<CardCells> cards() {
    return List.copyOf(cards);
  }

  /** What is wrong with the file itself and not with the words in its cells. */
  public List<Problem> problems() {
    return List.copyOf(problems);
  }

  private void read(Reader text) throws IOException {
    CsvLines lines = new CsvLines();
    try (CsvReader<CsvLines.Line> reader =
        CsvReader.builder()
            .allowUnclosedQuote(false)
            .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
            .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
            .maxBufferSize(LONGEST_CELL)
            .build(lines, text)) {
      for (CsvLines.Line line : reader) {
        if (!line.isBlank()) {
          take(line);
        }
      }
    } catch (CsvParseException broken) {
      String says = "A quotation mark here is not closed; what follows was not read.";
      refuse(lines.line(), "", "broken-quotes", "", says);
    }
    if (header.isEmpty() && problems.isEmpty()) {
      refuse(1, "", "empty-file", "", "This file is empty. Its first row names the columns.");
    }
  }

  private void take(CsvLines.Line line) {
    List<String> cells = line.cells().stream().map(Texts::trimmed).toList();
    if (header.isEmpty()) {
      header = Optional.of(cells);
      checkHeader(line.number(), cells);
      return;
    }
    Map<String, String> given = new HashMap<>();
    for (int i = 0; i < cells.size(); i++) {
      if (i < header.get().size()) {
        given.put(header.get().get(i), cells.get(i));
      } else if (!cells.get(i).isEmpty()) {
        String says = "This row has more cells than the first row. Quote a cell with a comma.";
        refuse(line.number(), "", "too-many-cells", cells.get(i), says);
      }
    }
    CardCells card = new CardCells(given, Place.line(file, line.number()).row());
    String name = Texts.normal(card.given(columns.get(0)));
    if (!name.isEmpty() && !named.add(name)) {
      card.refuse(columns.get(0), "named-twice", "each once", "This one stands above already.");
    }
    cards.add(card);
  }

  private void checkHeader(long number, List<String> titles) {
    Set<String> seen = new HashSet<>();
    for (String title : titles) {
      if (!columns.contains(title)) {
        String question = Nearest.question(title, columns);
        String says = "There is no column \"%s\" here.%s".formatted(Texts.shown(title), question);
        refuse(number, title, "unknown-column", title, says);
      } else if (!seen.add(title)) {
        refuse(number, title, "column-twice", title, "This column stands here twice.");
      }
    }
    if (!titles.contains(columns.get(0))) {
      String says = "The column \"%s\" is missing.".formatted(columns.get(0));
      refuse(number, columns.get(0), "missing-column", "", says);
    }
  }

  private void refuse(long line, String column, String code, String given, String says) {
    Problem.Where where = Place.line(file, line).row().at(Texts.shown(column));
    String allowed = "the columns " + String.join(",", columns);
    problems.add(new Problem(code, where, Texts.shown(given), allowed, says));
  }
}
