/**
 * What a person reads: sentences made from findings and dates, and the text form of a check.
 * Nothing here decides anything; {@code Texts} has the words of each language. Start with {@link
 * chillwright.print.Sentences}.
 */
package chillwright.print;
