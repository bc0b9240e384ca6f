/**
 * What is told of a question that is asked ahead: figures with their units, reasons where there are
 * none, cautions and sources. Start with {@link chillwright.core.ahead.Told}. The words are made
 * where findings are put into words.
 */
package chillwright.core.ahead;
