package chillwright.web.pages;

import java.util.List;

/** The home cook's questions, and the answers to those that were asked. */
public record KeepsView(
    Filled form,
    List<Choice> categories,
    String about,
    List<String> answer,
    List<String> because,
    String source,
    String leftOut,
    List<String> refreezing) {}
