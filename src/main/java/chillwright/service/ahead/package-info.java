/**
 * Questions that a kitchen asks before it cooks, asked in the same words on the command line and by
 * request. Start with {@link chillwright.service.ahead.Question}: each lists its parameters, so
 * that both ways offer the same and refuse the same, every fault at once. Nothing is stored.
 */
package chillwright.service.ahead;
