package chillwright.service;

import chillwright.core.log.Incoming;
import chillwright.core.log.LotId;
import chillwright.logfile.Cells;
import chillwright.logfile.CsvLog;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleLibrary;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A kitchen on a real file, with a clock that a test sets. */
final class TestKitchen implements AutoCloseable {
  static final ZoneId ZONE = ZoneId.of("America/Chicago");
  static final RuleLibrary LIBRARY = library();

  private final Path file;
  private Instant now = Instant.parse("2026-03-02T18:00:00Z");
  private Kitchen kitchen;

  TestKitchen(Path file) {
    this.file = file;
    this.kitchen = Kitchen.open(opening());
  }

  private static RuleLibrary library() {
    try {
      return RuleLibrary.load(Optional.empty());
    } catch (BrokenRules e) {
      throw new IllegalStateException(e);
    }
  }

  Opening opening() {
    return new Opening(
        file, Optional.of(ZONE), Optional.empty(), ZoneId.of("UTC"), LIBRARY, clock());
  }

  private InstantSource clock() {
    return () -> now;
  }

  Kitchen kitchen() {
    return kitchen;
  }

  Instant now() {
    return now;
  }

  void at(String moment) {
    now = Instant.parse(moment);
  }

  /** Rows under the header, in the words of a log file. */
  List<Incoming> rows(String csv) {
    List<Incoming> rows = new ArrayList<>();
    try {
      new CsvLog(new Cells(now))
          .read(
              "test.csv",
              new ByteArrayInputStream(csv.getBytes(StandardCharsets.UTF_8)),
              rows::add);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return rows;
  }

  Written log(String csv) {
    return kitchen.logbook().log(rows(csv), Optional.empty());
  }

  LotView lot(String code) {
    return kitchen.lots().lot(new LotId(code)).orElseThrow();
  }

  /** Closes it and opens the same file again. */
  void reopen() {
    kitchen.close();
    kitchen = Kitchen.open(opening());
  }

  @Override
  public void close() {
    kitchen.close();
  }
}
