package chillwright.rulebook;

import chillwright.core.kitchen.Allergen;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Words of ingredients that tell of an allergen. They are only ever a reason to look again: a text
 * in which none of them stands says nothing.
 */
public final class AllergenWords {
  private final List<Entry> entries;

  /**
   * Words that tell of one allergen.
   *
   * @param words in small letters, without accents, in the singular
   * @param but longer names that hold such a word and tell of something else
   * @param source where the words are from
   */
  public record Entry(Allergen allergen, List<String> words, List<String> but, String source) {
    public Entry {
      Objects.requireNonNull(allergen, "allergen");
      words = List.copyOf(words);
      but = List.copyOf(but);
      if (words.isEmpty() || source.isBlank()) {
        throw new IllegalArgumentException("words and their source: " + allergen.key());
      }
    }
  }

  /** An allergen that ingredients tell of, and the first word that does. */
  public record Named(Allergen allergen, String word) {}

  public AllergenWords(List<Entry> entries) {
    this.entries = List.copyOf(entries);
  }

  /**
   * The allergens that a text tells of, but those that were declared; in the order of the law.
   *
   * @param text ingredients, as people wrote them
   */
  public List<Named> undeclared(String text, Collection<Allergen> declared) {
    Map<Allergen, Named> named = new EnumMap<>(Allergen.class);
    String plain = plain(text);
    for (Entry entry : entries) {
      if (!declared.contains(entry.allergen())) {
        first(entry, plain)
            .ifPresent(
                word -> named.putIfAbsent(entry.allergen(), new Named(entry.allergen(), word)));
      }
    }
    return new ArrayList<>(named.values());
  }

  private Optional<String> first(Entry entry, String plain) {
    List<String> but =
        entries.stream()
            .filter(other -> other.allergen() == entry.allergen())
            .flatMap(other -> other.but().stream())
            .toList();
    String left = but.isEmpty() ? plain : any(but).matcher(plain).replaceAll(" ; ");
    Matcher found = any(entry.words()).matcher(left);
    return found.find() ? Optional.of(found.group()) : Optional.empty();
  }

  /** Any of those as whole words, one or several of them; the longest counts. */
  private static Pattern any(List<String> phrases) {
    String all =
        phrases.stream()
            .sorted((one, other) -> other.length() - one.length())
            .map(Pattern::quote)
            .collect(Collectors.joining("|"));
    return Pattern.compile("(?<![\\p{L}\\p{N}])(?:" + all + ")(?:e?s)?(?![\\p{L}\\p{N}])");
  }

  /** Small letters without accents, each gap one blank. */
  private static String plain(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFD)
        .replaceAll("\\p{M}+", "")
        .toLowerCase(Locale.ROOT)
        .replaceAll("\\s+", " ");
  }
}
