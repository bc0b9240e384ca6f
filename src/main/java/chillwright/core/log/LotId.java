package chillwright.core.log;

/** The code of a lot: 1 to 64 ASCII letters, digits, '.', '_' or '-'. */
public record LotId(String text) implements Comparable<LotId> {
  /** The longest code or id, in characters. */
  public static final int LONGEST = 64;

  public LotId {
    if (!isCode(text)) {
      throw new IllegalArgumentException("not a lot code: " + text);
    }
  }

  /** Whether the text can be the code of a lot or the id of an entry. */
  public static boolean isCode(String text) {
    // An address cannot end in these two: they mean the folder itself and the one above.
    boolean isFolder = text.equals(".") || text.equals("..");
    if (text.isEmpty() || text.length() > LONGEST || isFolder) {
      return false;
    }
    for (int i = 0; i < text.length(); i++) {
      if (!isCodeCharacter(text.charAt(i))) {
        return false;
      }
    }
    return true;
  }

  private static boolean isCodeCharacter(int c) {
    return (c >= 'a' && c <= 'z')
        || (c >= 'A' && c <= 'Z')
        || (c >= '0' && c <= '9')
        || c == '.'
        || c == '_'
        || c == '-';
  }

  @Override
  public int compareTo(LotId other) {
    return text.compareTo(other.text);
  }

  @Override
  public String toString() {
    return text;
  }
}
