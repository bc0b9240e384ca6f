package chillwright.web.pages;

import java.util.List;

/**
 * Who printed a figure: the first title, and all of them where there are more. A title stays as it
 * was published, in its own language.
 *
 * @param first the one that is shown
 * @param more how many others there are, in words; blank for none
 * @param all every title
 * @param rules the rule set that judged, with its version
 */
public record SourceNames(String first, String more, List<String> all, String rules) {
  static final SourceNames NONE = new SourceNames("", "", List.of(), "");

  public SourceNames {
    all = List.copyOf(all);
  }

  /** Of titles that stand in one line, a semicolon between. */
  static SourceNames of(String source, String rules, Visitor visitor) {
    List<String> all =
        List.of(source.split(";\\s+", -1)).stream().map(visitor.language()::named).toList();
    String more = all.size() == 1 ? "" : visitor.say("source.more", all.size() - 1);
    return new SourceNames(all.get(0), more, all, rules);
  }
}
