package chillwright.core.log;

import java.util.Arrays;
import java.util.Optional;

/** The word of an entry: most words put the lot in a phase, six only add to its record. */
public enum Word {
  COOKED("cooked", Phase.COOKED),
  PREPARED("prepared", Phase.PREPARED),
  RECEIVED("received", Phase.RECEIVED),
  OPENED("opened", Phase.OPENED),
  HOT_HOLDING("hot-holding", Phase.HOT_HOLDING),
  COOLING("cooling", Phase.COOLING),
  READING("reading", null),
  CHILLED("chilled", Phase.CHILLED),
  FROZEN("frozen", Phase.FROZEN),
  THAWING("thawing", Phase.THAWING),
  REHEATING("reheating", Phase.REHEATING),
  TIME_CONTROL("time-control", Phase.TIME_CONTROL),
  SET_OUT("set-out", Phase.SET_OUT),
  /** Put into another place, and nothing else: what it is and what runs stay. */
  MOVED("moved", null),
  PORTIONS("portions", null),
  SERVED("served", Phase.SERVED),
  DISCARDED("discarded", Phase.DISCARDED),
  ACTION("action", null),
  CORRECTION("correction", null);

  private final String text;
  private final Optional<Phase> phase;

  Word(String text, Phase phase) {
    this.text = text;
    this.phase = Optional.ofNullable(phase);
  }

  /** As written in log files and requests. */
  public String text() {
    return text;
  }

  /** The phase this word puts a lot in; empty for a word that only adds to the record. */
  public Optional<Phase> phase() {
    return phase;
  }

  /** The word so written, in lower case; empty if there is none. */
  public static Optional<Word> ofText(String text) {
    return Arrays.stream(values()).filter(word -> word.text.equals(text)).findFirst();
  }
}
