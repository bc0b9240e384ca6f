package chillwright.core.rules;

/** What a record shows under one rule, worst first. Silence is never a pass. */
public enum Verdict {
  /** Out of compliance: the record proves the limit was missed. */
  OUT("out"),
  /** The record neither proves nor disproves it. */
  NOT_SHOWN("not-shown"),
  /** Still running; its deadline is known. */
  PENDING("pending"),
  /** In compliance: the record meets the cited limit. It says nothing about the food itself. */
  IN("in"),
  /** This authority sets no number and no state. */
  NO_RULE("no-rule");

  private final String text;

  Verdict(String text) {
    this.text = text;
  }

  /** As written in answers. */
  public String text() {
    return text;
  }
}
