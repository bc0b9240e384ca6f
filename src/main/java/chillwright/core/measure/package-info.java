/**
 * What a probe and a clock can show: a temperature exactly as it was read, a limit exactly as its
 * authority prints it, and an elapsed time known only within bounds. Start with {@link
 * chillwright.core.measure.Limit}.
 */
package chillwright.core.measure;
