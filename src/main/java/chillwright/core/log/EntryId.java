package chillwright.core.log;

/** The id of one entry, unique in a kitchen: 1 to 64 ASCII letters, digits, '.', '_' or '-'. */
public record EntryId(String text) {
  public EntryId {
    if (!LotId.isCode(text)) {
      throw new IllegalArgumentException("not an entry id: " + text);
    }
  }

  @Override
  public String toString() {
    return text;
  }
}
