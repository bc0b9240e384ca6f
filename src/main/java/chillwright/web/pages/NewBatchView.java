package chillwright.web.pages;

import java.util.List;

/** A batch about to be begun. */
public record NewBatchView(
    Filled form,
    List<String> foods,
    List<Choice> categories,
    List<String> words,
    List<String> places,
    List<String> pans) {}
