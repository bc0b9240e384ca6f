/**
 * The dates of a lot, and which of them governs. Start with {@link
 * chillwright.core.keeping.Keeping}.
 */
package chillwright.core.keeping;
