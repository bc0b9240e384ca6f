/**
 * What a person reads: sentences made from findings and dates, and the text form of a check.
 * Nothing here decides anything; start with {@link chillwright.print.Sentences}.
 */
package chillwright.print;
