package chillwright.web.pages;

import chillwright.core.log.Category;
import chillwright.core.log.FoodWords;
import chillwright.core.log.KeepingList;
import chillwright.core.log.OtherQuestion;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** Why words that were typed as a food get no days. */
record NoDays(KeepingList list, Visitor visitor) {
  private static final Pattern KEY = Pattern.compile("[a-z]+(?:_[a-z]+)+");

  /** Empty where they get some, or no food is named. */
  Optional<String> says(Map<String, String> fields) {
    String dish = fields.getOrDefault("dish", "");
    Optional<String> other = OtherQuestion.of(dish).map(asked -> says(dish, asked));
    boolean isChosen = !fields.getOrDefault("category", "").isEmpty();
    return other.isPresent() || dish.isEmpty() || isChosen || !kinds(dish).isEmpty()
        ? other
        : new FoodWords(list)
            .untold(dish)
            .map(untold -> titled(visitor.language().named(untold.says())))
            .map(why -> visitor.say("keeps.untold", dish, why));
  }

  private String says(String dish, OtherQuestion asked) {
    String key =
        switch (asked) {
          case LEFT_OUT -> "keeps.other.left-out";
          case FREEZE_AGAIN -> "keeps.other.freeze-again";
          case POWER_OUT -> "keeps.other.power-out";
        };
    return visitor.say(key, dish);
  }

  /** The kinds whose title those words are. */
  List<Category> kinds(String dish) {
    String word = dish.toLowerCase(visitor.language().locale());
    return list.categories().stream()
        .filter(kind -> visitor.language().titled(kind).equalsIgnoreCase(word))
        .toList();
  }

  /** A note that names other categories by their keys, with their titles instead. */
  String titled(String note) {
    return KEY.matcher(note)
        .replaceAll(
            found ->
                list.category(found.group())
                    .map(kind -> visitor.say("keeps.quoted", visitor.language().titled(kind)))
                    .orElse(found.group()));
  }
}
