package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.kitchen.DaySign;
import chillwright.core.kitchen.Handover;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.PlaceLimit;
import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Word;
import chillwright.core.measure.Temperature;
import chillwright.service.Places.PlaceReading;
import chillwright.service.Reports.Due;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A day of the kitchen.
 *
 * @param isToday whether it is the day of the answer; what is unfinished is known of today only
 * @param places by name
 * @param open each lot once: what is owed first, then what is out, then what runs by when it falls
 *     due
 * @param hasMoreOpen whether more lots are open than are listed
 * @param handovers in the order of writing
 * @param signs in the order of writing
 */
public record Day(
    LocalDate date,
    boolean isToday,
    List<PlaceRound> places,
    List<Open> open,
    boolean hasMoreOpen,
    List<Handover> handovers,
    List<DaySign> signs) {
  public Day {
    places = List.copyOf(places);
    open = List.copyOf(open);
    handovers = List.copyOf(handovers);
    signs = List.copyOf(signs);
  }

  /** Whether its last sign closed it. */
  public boolean isClosed() {
    return isClosed(signs);
  }

  static boolean isClosed(List<DaySign> signs) {
    return !signs.isEmpty() && signs.get(signs.size() - 1).word() == DaySign.Word.CLOSED;
  }

  /**
   * The places that are to be read: those that call for something, then the others by name, so that
   * none moves because it was read.
   */
  public List<PlaceRound> round() {
    return places.stream()
        .filter(PlaceRound::isAsked)
        .sorted(Comparator.comparing(PlaceRound::calls).reversed())
        .toList();
  }

  /** The places of which nothing is asked. */
  public List<PlaceRound> others() {
    return places.stream().filter(place -> !place.isAsked()).toList();
  }

  /** How many lots are out, or treated as missed. */
  public int out() {
    return (int) open.stream().filter(lot -> lot.wrong().isPresent()).count();
  }

  /** How many places were read less often than they should be. */
  public int unread() {
    return (int) places.stream().filter(PlaceRound::isDue).count();
  }

  /**
   * A place on its round.
   *
   * @param known what the kitchen said of it, if anything
   * @param limit what its readings are held against, if anything
   * @param last the last reading until the end of the day, corrections applied
   * @param read how many rounds its readings of the day are; one soon after another is the same
   * @param inside lots there now, where its last reading is beyond its limit or it is not in use
   * @param isFilledSince whether food came into it after it was said to be not in use
   * @param written its readings of the day and what was done about them, in order of time
   */
  public record PlaceRound(
      String name,
      Optional<KnownPlace> known,
      Optional<PlaceLimit> limit,
      Optional<LogEntry> last,
      int read,
      List<LotState> inside,
      boolean isFilledSince,
      List<PlaceReading> written) {
    public PlaceRound {
      inside = List.copyOf(inside);
      written = List.copyOf(written);
    }

    /** What was done about its readings on the day, in order of time. */
    public List<LogEntry> acts() {
      return written.stream()
          .flatMap(reading -> reading.standing().stream())
          .filter(entry -> entry.word() == Word.ACTION)
          .toList();
    }

    /** Whether it is not in use: said so on the day, with no food put in and none read after. */
    public boolean isNotInUse() {
      return !isFilledSince && notInUse().isPresent();
    }

    /** By what it was said to be not in use on the day, where nobody read it after that. */
    Optional<LogEntry> notInUse() {
      return written.stream()
          .flatMap(each -> each.standing().stream())
          .filter(entry -> entry.is(How.NOT_IN_USE) || entry.temperature().isPresent())
          .reduce((earlier, later) -> later)
          .filter(entry -> entry.is(How.NOT_IN_USE));
    }

    /** What said on the day that it is not in use, that included which was voided. */
    public List<PlaceReading> idle() {
      return written.stream().filter(of -> of.written().is(How.NOT_IN_USE)).toList();
    }

    /** Its readings of the day, those included that were corrected or voided. */
    public List<PlaceReading> readings() {
      return written.stream().filter(of -> of.written().word() != Word.ACTION).toList();
    }

    /** Whether the last reading is within the limit; empty without a reading or a limit. */
    public Optional<Boolean> isWithin() {
      Optional<Temperature> reading = last.flatMap(LogEntry::temperature);
      return limit.flatMap(bound -> reading.map(bound::isMet));
    }

    /** Whether it is a freezer in which food may be thawing, whatever figure it is held to. */
    public boolean isThawing() {
      boolean isFreezer =
          known.filter(place -> place.kind() == KnownPlace.Kind.FREEZER).isPresent();
      Optional<Temperature> reading = last.flatMap(LogEntry::temperature);
      return isFreezer && reading.filter(r -> !PlaceLimit.isFreezing(r)).isPresent();
    }

    /**
     * Whether it was read less often on that day than it should be: once, where the kitchen did not
     * say how often; of one that is not in use no reading is missing.
     */
    public boolean isDue() {
      return !isNotInUse() && read < known.map(KnownPlace::rounds).orElse(1);
    }

    /** Whether it is read in rounds, was read on the day, or calls for something. */
    private boolean isAsked() {
      return isDue() || read > 0 || calls() || !acts().isEmpty();
    }

    /** Whether its last reading asks for something to be done. */
    public boolean calls() {
      return isThawing() || !isWithin().orElse(true);
    }
  }

  /**
   * A lot that somebody has to go on with.
   *
   * @param owed what was missed, or is not shown, and nobody did anything about yet
   * @param out what makes it unfit for use although something was done about it
   * @param due what falls due next of it; one of the three is always there
   */
  public record Open(LotState lot, Optional<Due> owed, Optional<Due> out, Optional<Due> due) {
    /** What went wrong with it, if anything. */
    public Optional<Due> wrong() {
      return owed.or(() -> out);
    }
  }

  /** The last word on who goes on with a lot. */
  public Optional<Handover> takenOver(LotId lot) {
    return handovers.stream()
        .filter(handover -> handover.lot().equals(lot))
        .reduce((earlier, later) -> later);
  }
}
