package chillwright.rulebook;

/**
 * The text of one file.
 *
 * @param name as a reader can find it, such as "rules/us-home/frozen.yaml"
 * @param isProven whether it is a file of this jar, which the build has held against its schema
 */
record TextFile(String name, String text, boolean isProven) {
  /** The file's own name without folder and ending, such as "frozen". */
  String stem() {
    String last = name.substring(name.replace('\\', '/').lastIndexOf('/') + 1);
    int dot = last.lastIndexOf('.');
    return dot < 0 ? last : last.substring(0, dot);
  }
}
