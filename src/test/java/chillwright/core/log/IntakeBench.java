package chillwright.core.log;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.log.Category.Freezes;
import chillwright.core.log.Category.Range;
import chillwright.core.log.Problem.Where.InFile;
import chillwright.logfile.Cells;
import chillwright.logfile.CsvLog;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Takes logs in as text, and keeps what was admitted. A time of day such as 10:00 in a cell of its
 * own stands for that time in UTC on 2 March 2026.
 */
final class IntakeBench implements Stored {
  static final ZoneId ZONE = ZoneId.of("America/Chicago");
  static final Instant WRITTEN = Instant.parse("2026-03-03T00:00:00Z");
  static final KeepingList KEEPING =
      new KeepingList(
          Stream.of("soup_or_stew", "gravy_or_broth", "cooked_meat")
              .map(IntakeBench::category)
              .toList());

  private final Map<LotId, LotLog> lots = new LinkedHashMap<>();
  private final Map<EntryId, LogEntry> ofPlaces = new LinkedHashMap<>();

  static Category category(String key) {
    return new Category(
        key,
        key,
        Range.NONE,
        Range.NONE,
        Range.NONE,
        Freezes.WELL,
        true,
        true,
        false,
        false,
        false,
        "made up for this test",
        "practice",
        Optional.empty(),
        List.of(),
        List.of());
  }

  static List<Incoming> rows(String file, String text) {
    String whole = text.replaceAll("(?<=,)(\\d\\d:\\d\\d)(?=,|\\n|$)", "2026-03-02T$1:00Z");
    if (!whole.contains("note")) {
      whole = withReasons(whole);
    }
    List<Incoming> rows = new ArrayList<>();
    try {
      new CsvLog(new Cells(WRITTEN))
          .read(file, new ByteArrayInputStream(whole.getBytes(StandardCharsets.UTF_8)), rows::add);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return rows;
  }

  /** Adds a note, which in a correction is the reason that it has to give. */
  private static String withReasons(String text) {
    StringBuilder noted = new StringBuilder();
    for (String line : text.lines().toList()) {
      String note = line.startsWith("lot,") ? "note" : line.contains(",correction,") ? "typo" : "";
      noted.append(line).append(',').append(note).append('\n');
    }
    return noted.toString();
  }

  /** Takes in one file without keeping it. */
  Admission admit(String text) {
    return admit(rows("log.csv", text));
  }

  Admission admit(List<Incoming> rows) {
    return new Intake(this, KEEPING, ZONE, WRITTEN).admit(rows);
  }

  /** Takes in one file, which has no fault, and keeps it. */
  Admission keep(String text) {
    return keep(rows("kept.csv", text));
  }

  Admission keep(List<Incoming> rows) {
    Admission admission = admit(rows);
    assertThat(admission.problems()).isEmpty();
    store(admission);
    return admission;
  }

  void store(Admission admission) {
    admission.lots().forEach(lot -> lots.put(lot.log().lot(), lot.log()));
    admission.ofPlaces().forEach(entry -> ofPlaces.put(entry.id(), entry));
    // A lot made of one that grew has to see its source as that is now.
    lots.replaceAll((lot, log) -> refreshed(log));
  }

  private LotLog refreshed(LotLog log) {
    List<LotLog> sources =
        log.sources().stream()
            .map(source -> refreshed(lots.getOrDefault(source.lot(), source)))
            .toList();
    return new LotLog(log.lot(), log.entries(), sources);
  }

  @Override
  public Optional<LotLog> lot(LotId lot) {
    return Optional.ofNullable(lots.get(lot));
  }

  @Override
  public List<LotLog> madeOf(LotId lot) {
    return lots.values().stream()
        .filter(log -> log.sources().stream().anyMatch(source -> source.lot().equals(lot)))
        .toList();
  }

  @Override
  public Optional<Found> entry(EntryId id) {
    return lots.values().stream()
        .flatMap(
            log -> log.entries().stream().map(entry -> new Found(Optional.of(log.lot()), entry)))
        .filter(found -> found.entry().id().equals(id))
        .findFirst()
        .or(
            () ->
                Optional.ofNullable(ofPlaces.get(id))
                    .map(entry -> new Found(Optional.empty(), entry)));
  }

  @Override
  public boolean hasIdBeginning(String start) {
    return Stream.concat(
            lots.values().stream().flatMap(log -> log.entries().stream()).map(LogEntry::id),
            ofPlaces.keySet().stream())
        .anyMatch(id -> id.text().startsWith(start));
  }

  @Override
  public List<LogEntry> ofPlaces(Instant happenedAt) {
    return ofPlaces.values().stream()
        .filter(entry -> entry.happenedAt().equals(happenedAt))
        .toList();
  }

  /** The lots kept so far. */
  Map<LotId, LotLog> lots() {
    return lots;
  }

  static InFile at(long line, String column) {
    return new InFile("log.csv", line, column);
  }

  static List<String> lotsOf(Admission admission) {
    return admission.lots().stream().map(lot -> lot.log().lot().text()).toList();
  }

  static List<String> idsOf(List<LogEntry> entries) {
    return entries.stream().map(entry -> entry.id().text()).toList();
  }
}
