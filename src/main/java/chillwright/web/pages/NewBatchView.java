package chillwright.web.pages;

import java.util.List;

/**
 * A batch about to be begun.
 *
 * @param warning what to look at again of the food that is chosen; blank for nothing
 */
public record NewBatchView(
    Filled form,
    List<String> foods,
    List<Choice> categories,
    List<String> words,
    List<String> places,
    List<String> pans,
    String warning) {}
