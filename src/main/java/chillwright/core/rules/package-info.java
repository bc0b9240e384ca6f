/**
 * What an authority's rules say of a lot. A {@linkplain chillwright.core.rules.Rule rule} is cited
 * data in one of a few {@linkplain chillwright.core.rules.Shape shapes}; {@link
 * chillwright.core.rules.Assessment} lays the rules of a set over a timeline and gives {@linkplain
 * chillwright.core.rules.Finding findings}, without a clock: each finding is pending until one
 * instant, and one verdict from then on.
 */
package chillwright.core.rules;
