/**
 * What happened to food, as it was written down: immutable {@linkplain
 * chillwright.core.log.LogEntry entries}, and the {@linkplain chillwright.core.log.Timeline
 * timeline} that comes of them once corrections are applied and lots divided or combined are
 * followed to their sources. What is to become an entry passes {@link chillwright.core.log.Intake}
 * first.
 */
package chillwright.core.log;
