package chillwright.storage;

import chillwright.core.keeping.Keeping.Governs;
import chillwright.core.kitchen.DaySign;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.KnownProbe;
import chillwright.core.kitchen.ProbeCheck;
import chillwright.core.log.How;
import chillwright.core.log.Phase;
import chillwright.core.log.Word;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Verdict;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The words of a closed list as they are stored: a word's place in its list here is its code. So a
 * list may grow at its end only, whatever the order of the words in the core.
 */
final class Codes<E extends Enum<E>> {
  static final Codes<Scale> SCALES =
      new Codes<>(Scale.class, List.of(Scale.CELSIUS, Scale.FAHRENHEIT));

  static final Codes<Verdict> VERDICTS =
      new Codes<>(
          Verdict.class,
          List.of(Verdict.OUT, Verdict.NOT_SHOWN, Verdict.PENDING, Verdict.IN, Verdict.NO_RULE));

  static final Codes<Word> WORDS =
      new Codes<>(
          Word.class,
          List.of(
              Word.COOKED,
              Word.PREPARED,
              Word.RECEIVED,
              Word.OPENED,
              Word.HOT_HOLDING,
              Word.COOLING,
              Word.READING,
              Word.CHILLED,
              Word.FROZEN,
              Word.THAWING,
              Word.REHEATING,
              Word.TIME_CONTROL,
              Word.SET_OUT,
              Word.PORTIONS,
              Word.SERVED,
              Word.DISCARDED,
              Word.ACTION,
              Word.CORRECTION,
              Word.MOVED));

  static final Codes<Phase> PHASES =
      new Codes<>(
          Phase.class,
          List.of(
              Phase.COOKED,
              Phase.PREPARED,
              Phase.RECEIVED,
              Phase.OPENED,
              Phase.HOT_HOLDING,
              Phase.COOLING,
              Phase.CHILLED,
              Phase.FROZEN,
              Phase.THAWING,
              Phase.REHEATING,
              Phase.TIME_CONTROL,
              Phase.SET_OUT,
              Phase.SERVED,
              Phase.DISCARDED,
              Phase.USED_UP,
              Phase.PUT_BACK,
              Phase.COUNTED_OUT));

  static final Codes<How> HOWS =
      new Codes<>(
          How.class,
          List.of(
              How.SERVE_NOW,
              How.MICROWAVE,
              How.COMMERCIAL,
              How.ROAST,
              How.REFRIGERATOR,
              How.RUNNING_WATER,
              How.WHILE_COOKING,
              How.FOUR_HOURS,
              How.SIX_HOURS,
              How.LAW_ALLOWS,
              How.HARD,
              How.CRYSTALS,
              How.SOFT,
              How.COUNTED,
              How.ALLOWED,
              How.NOT_IN_USE));

  static final Codes<Governs> GOVERNING =
      new Codes<>(
          Governs.class,
          List.of(
              Governs.DATE_MARK_LAST_DAY,
              Governs.DAYS_LEFT_WHEN_THAWED,
              Governs.CHILLED_LAST_DAY,
              Governs.DISCARD_AT,
              Governs.BEST_QUALITY_BY,
              Governs.QUALITY_LIMIT,
              Governs.LAST_DAY_MISSED));

  static final Codes<KnownProbe.Scales> PROBE_SCALES =
      new Codes<>(
          KnownProbe.Scales.class,
          List.of(KnownProbe.Scales.CELSIUS, KnownProbe.Scales.FAHRENHEIT, KnownProbe.Scales.BOTH));

  static final Codes<ProbeCheck.Method> CHECK_METHODS =
      new Codes<>(
          ProbeCheck.Method.class,
          List.of(
              ProbeCheck.Method.ICE_POINT,
              ProbeCheck.Method.BOILING_POINT,
              ProbeCheck.Method.REFERENCE));

  static final Codes<KnownPlace.Kind> PLACE_KINDS =
      new Codes<>(
          KnownPlace.Kind.class,
          List.of(
              KnownPlace.Kind.REFRIGERATOR,
              KnownPlace.Kind.FREEZER,
              KnownPlace.Kind.HOT_HOLDING,
              KnownPlace.Kind.COUNTER,
              KnownPlace.Kind.OTHER));

  static final Codes<DaySign.Word> SIGNS =
      new Codes<>(DaySign.Word.class, List.of(DaySign.Word.CLOSED, DaySign.Word.REOPENED));

  private final List<E> words;
  private final Map<E, Integer> codes;

  private Codes(Class<E> type, List<E> words) {
    this.words = words;
    this.codes = new EnumMap<>(type);
    for (E word : words) {
      codes.put(word, codes.size());
    }
    if (codes.size() != type.getEnumConstants().length) {
      throw new IllegalStateException("a word without a code, or twice: " + type.getSimpleName());
    }
  }

  int of(E word) {
    return codes.get(word);
  }

  /** The code, or null where there is no word: for a column that may be NULL. */
  Integer orNull(Optional<E> word) {
    return word.map(codes::get).orElse(null);
  }

  /**
   * @throws IllegalStateException if no word has that code, which a newer program may have written
   */
  E word(int code) {
    if (code < 0 || code >= words.size()) {
      throw new IllegalStateException("no word has the stored code " + code);
    }
    return words.get(code);
  }

  Optional<E> wordOrEmpty(Integer code) {
    return Optional.ofNullable(code).map(this::word);
  }
}
