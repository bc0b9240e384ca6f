package chillwright.web.pages;

/** One of a list to choose from: the key that is sent, and what a person reads. */
public record Choice(String key, String title) {}
