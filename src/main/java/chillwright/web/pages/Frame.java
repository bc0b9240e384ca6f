package chillwright.web.pages;

import chillwright.print.Language;
import io.javalin.http.Context;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What stands around every page.
 *
 * @param title of the page
 * @param kitchen its name
 * @param here the address of the page, so that the list of pages can mark it
 * @param query with which it was asked for, "?" first; blank where it is not kept
 * @param clock the moment it was made, in the kitchen's zone
 * @param iso the same as RFC 3339 writes it, for the script to count on from
 * @param judgedBy the rule set, and that others decide
 * @param notices what came of what the person just did
 */
public record Frame(
    Visitor visitor,
    String title,
    String kitchen,
    String here,
    String query,
    String clock,
    String iso,
    String judgedBy,
    List<Notice> notices) {
  public Frame {
    notices = List.copyOf(notices);
  }

  /**
   * What came of what the person just did.
   *
   * @param lots whose pages it leads to
   * @param mend where a slip in it is corrected, if it may be
   * @param ways to what it calls for
   */
  public record Notice(String says, List<String> lots, Optional<String> mend, List<Choice> ways) {
    public Notice {
      lots = List.copyOf(lots);
      ways = List.copyOf(ways);
    }

    Notice(String says, List<String> lots, Optional<String> mend) {
      this(says, lots, mend, List.of());
    }

    static List<Notice> plain(List<String> says) {
      return says.stream().map(line -> new Notice(line, List.of(), Optional.empty())).toList();
    }
  }

  /** A frame that tells nothing of the kitchen, nor asks it anything. */
  static Frame bare(Visitor visitor, String title, Instant now) {
    return new Frame(visitor, title, "Chillwright", "", "", "", now.toString(), "", List.of());
  }

  /** The same judged by other rules than those of the kitchen. */
  Frame judgedBy(String rules) {
    return new Frame(visitor, title, kitchen, here, query, clock, iso, rules, notices);
  }

  /** The same with what was asked, so that another language or scale leads back to the answer. */
  Frame asked(Context context) {
    String asked = Optional.ofNullable(context.queryString()).map(text -> "?" + text).orElse("");
    return new Frame(visitor, title, kitchen, here, asked, clock, iso, judgedBy, notices);
  }

  /** A text of the pages in this person's language. */
  public String say(String key, Object... filled) {
    return visitor.say(key, filled);
  }

  /** A page that can be gone to from everywhere. */
  public record Link(String address, String key) {}

  private static final List<Link> PAGES =
      List.of(
          new Link(NowPage.ADDRESS, "page.now"),
          new Link(NewBatchPage.ADDRESS, "page.new-batch"),
          new Link(LotsPages.ON_HAND, "page.on-hand"),
          new Link(KeepsPage.ADDRESS, "page.keeps"),
          new Link(LotsPages.ALL, "page.lots"),
          new Link(DayPage.ADDRESS, "page.day"),
          new Link(PlansPage.ADDRESS, "page.plans"),
          new Link(RecordPage.ADDRESS, "page.record"),
          new Link(RulesPage.ADDRESS, "page.kitchen"));

  public List<Link> pages() {
    return PAGES;
  }

  public List<Language> languages() {
    return List.of(Language.values());
  }

  public String css() {
    return Faces.CSS.address();
  }

  public String script() {
    return Faces.SCRIPT.address();
  }

  /** A new text for each form, so that sending it twice counts once. */
  public String once() {
    return Visitor.random();
  }

  public boolean isHere(String address) {
    return here.equals(address);
  }
}
