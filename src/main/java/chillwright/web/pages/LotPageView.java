package chillwright.web.pages;

import chillwright.print.Language;
import chillwright.print.SpeedupText;
import java.util.List;

/**
 * One lot, all of it.
 *
 * @param next why it is not for use, then what falls due next
 * @param isFrozen whether it may read below zero
 * @param isOwed whether something is owed, which an action settles
 * @param also parts for which the same entry can be made
 * @param words the words that may come next, the likeliest first
 * @param probes what vouches for its readings
 * @param curve its temperatures as an SVG picture; blank where there are too few
 * @param methods address of what coolings of this food show; blank where it never cooled
 * @param labelsLeadNowhere whether the code on its labels would lead a phone to itself
 * @param labels how its label fits the sheets
 * @param parts how many lots on hand are nothing but parts of it
 */
public record LotPageView(
    String code,
    Sign standing,
    String where,
    List<Next> next,
    boolean isOwed,
    boolean isFrozen,
    Filled form,
    Others also,
    List<String> words,
    List<String> hows,
    List<String> places,
    List<String> pans,
    List<String> people,
    String curve,
    Ahead ahead,
    String methods,
    List<Found> findings,
    List<String> dates,
    List<String> frozenLife,
    List<String> because,
    List<String> sources,
    List<String> descendants,
    List<String> givenOut,
    Contents contents,
    Acts acts,
    List<Entry> entries,
    List<String> placeReadings,
    List<String> probes,
    boolean labelsLeadNowhere,
    Labels labels,
    int parts,
    List<Choice> plans) {
  private static final int LIKELY = 5;

  /** So many documents of labels are told without a touch. */
  private static final int AT_ONCE = 3;

  /** Whether it has portions left that labels can be printed for. */
  public boolean hasPortions() {
    return !acts.left().isEmpty() && !acts.left().equals("0");
  }

  /** The words that are offered at once. */
  public List<String> likely() {
    return words.subList(0, Math.min(LIKELY, words.size()));
  }

  /** The words that are folded away. */
  public List<String> others() {
    return words.subList(Math.min(LIKELY, words.size()), words.size());
  }

  /** The words beside which a place of their own is filled in. */
  public List<String> colds() {
    return words.stream().filter(ColdPlace::isCold).toList();
  }

  public boolean isUnlikely(String word) {
    return others().contains(word);
  }

  /** The entries with a reading of the food, for the table beside the curve. */
  public List<Entry> readings() {
    return entries.stream().filter(entry -> !entry.read().isEmpty()).toList();
  }

  /**
   * How its label fits the sheets.
   *
   * @param language of whoever looks, in which labels are printed where no other is chosen
   * @param undrawable the letters that no font here has, in words; blank for none
   * @param missing what a buyer may need to read and nobody has put on file, in words
   * @param asWritten what stays as the kitchen wrote it in a label of any language, in words
   * @param asked before any is made; none of food that is for use
   * @param made what was made of it before, the newest first, a line each
   * @param lacking what the last of them do not name, in words; blank where they name all
   * @param form as it was filled in before, where it is mended
   */
  public record Labels(
      List<LabelSheet> sheets,
      Language language,
      String undrawable,
      List<String> missing,
      List<String> asWritten,
      List<Question> asked,
      List<String> made,
      String lacking,
      Filled form) {
    public Labels {
      made = List.copyOf(made);
      asWritten = List.copyOf(asWritten);
      asked = List.copyOf(asked);
      missing = List.copyOf(missing);
      sheets = List.copyOf(sheets);
    }

    /** That field as it was filled in before, or as it usually is. */
    public String given(String field, String usual) {
      return form.has(field) ? form.given(field) : usual;
    }

    /** What is shown at once of what was made. */
    public List<String> lately() {
      return made.subList(0, Math.min(AT_ONCE, made.size()));
    }

    /** What is folded away. */
    public List<String> earlier() {
      return made.subList(Math.min(AT_ONCE, made.size()), made.size());
    }

    public boolean isOpen() {
      return !form.fields().isEmpty();
    }

    /** The first sheet on which all fits, or else the first. */
    public String usual() {
      return sheets.stream()
          .filter(sheet -> sheet.leftOut().isEmpty())
          .findFirst()
          .orElse(sheets.get(0))
          .key();
    }

    public List<Language> languages() {
      return List.of(Language.values());
    }

    /** What is left out on the sheets where not all fits, a line each. */
    public List<String> leftOut() {
      return sheets.stream().map(LabelSheet::leftOut).filter(line -> !line.isEmpty()).toList();
    }
  }

  /**
   * A sheet of labels.
   *
   * @param name with a word where all fits on it
   * @param leftOut what has no room on it, in words; blank where all fits
   */
  public record LabelSheet(String key, String name, String leftOut) {}

  /**
   * What is in it.
   *
   * @param gap that something is not known; blank where all is on file
   * @param changed that its ingredients are those of today's description; blank where nothing of
   *     its allergens was changed
   * @param warning that ingredients name an allergen that is not declared; blank for nothing
   */
  public record Contents(String gap, List<String> says, String changed, String warning) {}

  /**
   * Parts of the lot, or of the batch that it is a part of.
   *
   * @param areAlone whether nothing is left but these: then the lot itself takes no entry
   * @param shared what is the same for several of them, told once
   */
  public record Others(boolean areAlone, List<Shared> shared, List<Other> lots) {
    public Others {
      shared = List.copyOf(shared);
      lots = List.copyOf(lots);
    }

    /** Whether any of them is to get the entry. */
    public boolean isOpen() {
      return lots.stream().anyMatch(lot -> lot.isTicked() || !lot.temperature().isEmpty());
    }
  }

  /** What several parts are told alike. */
  public record Shared(Next next, List<String> codes) {
    public Shared {
      codes = List.copyOf(codes);
    }
  }

  /**
   * One of these parts.
   *
   * @param temperature that was filled in for it
   */
  public record Other(
      String code,
      String where,
      boolean isTicked,
      String temperature,
      Sign standing,
      List<Next> next) {
    public Other {
      next = List.copyOf(next);
    }
  }

  /** A part that can go back into the lot it was divided from. */
  public record Back(String part, String whole) {}

  /**
   * A way to correct the counts of a part, in which more was found, and of what it came from.
   *
   * @param count how many more
   * @param left how many the log says
   */
  public record More(String count, int left, String way, String says) {}

  /**
   * A part that what was found may have been written for.
   *
   * @param more how many were found beyond the log
   * @param left how many the log says
   * @param given how many of them, as filled in or as counts there say
   */
  public record Giver(String more, int left, String code, String says, String given) {}

  /** Parts that cannot, and why. */
  public record Kept(List<String> parts, String why) {}

  /**
   * What can be done with the whole lot.
   *
   * @param moves places it can be moved to
   * @param doubt what to log of a lot called frozen where nothing stays frozen; blank for none
   * @param canPart whether it can be divided
   * @param partners lots it may be put together with
   * @param left how many portions are left; blank where they are not counted
   * @param putBacks parts, or the lot itself, that can go back into what they were divided from
   * @param kept parts, or the lot itself, that cannot
   * @param more ways to correct the counts, where more was counted than the log says
   * @param givers parts that it may have been written for
   * @param form what was filled in; "form" names which of them it was
   */
  public record Acts(
      List<Move> moves,
      String doubt,
      boolean canPart,
      List<Partner> partners,
      boolean canCombine,
      String left,
      List<Back> putBacks,
      List<Kept> kept,
      List<More> more,
      List<Giver> givers,
      List<Choice> categories,
      Filled form) {
    /** Whether that form is shown again with what is wrong. */
    public boolean isAgain(String which) {
      return form.given("form").equals(which);
    }

    /** What was filled in, where it was in that form. */
    public String given(String which, String name) {
      return isAgain(which) ? form.given(name) : "";
    }

    /** Whether a lot is ticked. */
    public boolean isTicked(String code) {
      return isAgain("combined") && List.of(form.given("from").split(" ")).contains(code);
    }
  }

  /**
   * Places that it can be moved to.
   *
   * @param word what the log takes the move as
   */
  public record Move(String word, String says, List<String> places) {}

  /**
   * A lot that may be put together with this one.
   *
   * @param left how many portions are left; blank where they are not counted
   */
  public record Partner(String code, String food, String where, String left) {}

  /**
   * A sentence, with a clock beside it where it has a moment ahead.
   *
   * @param until as RFC 3339 writes it; blank where no moment is set
   */
  public record Next(String says, String until, String left) {}

  /**
   * When its limits are expected to be reached.
   *
   * @param says one sentence for each limit; none where nothing cools
   * @param aims what it must read by when to be in time still
   * @param basis what all of it rests on
   * @param earlier how coolings that began this way went; blank where none did
   * @param sooner what would bring it to its next limit sooner
   */
  public record Ahead(
      List<String> says,
      List<String> aims,
      String basis,
      String earlier,
      List<SpeedupText.Line> sooner) {
    public Ahead {
      says = List.copyOf(says);
      aims = List.copyOf(aims);
      sooner = List.copyOf(sooner);
    }
  }

  /** A finding with its limit and where that is printed. */
  public record Found(Sign standing, Next says, String limit, String citation) {}

  /**
   * An entry as it stands.
   *
   * @param title key of its word, or of what else it is called
   * @param text what it says besides its word
   * @param was what it said before a correction; blank for one that was not corrected
   * @param why who corrected it, when and why
   * @param read the temperature as it stands; blank where none was read, or it was voided
   * @param canBeCorrected whether it stands; what is void is written again
   * @param each the entries that this line tells at once; none where it tells of one
   */
  public record Entry(
      String id,
      String iso,
      String clock,
      String title,
      String text,
      String was,
      String why,
      String read,
      boolean canBeCorrected,
      List<Entry> each) {
    public Entry {
      each = List.copyOf(each);
    }

    /** One line for all of these. */
    Entry over(String says, List<Entry> parts) {
      return new Entry(id, iso, clock, title, says, was, why, read, canBeCorrected, parts);
    }
  }
}
