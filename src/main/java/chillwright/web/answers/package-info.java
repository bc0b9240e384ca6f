/**
 * The shapes of answers as JSON, shared by the service and by the command line, so that both say
 * the same thing in the same words. Field names are fixed by the API; a blank is null.
 */
package chillwright.web.answers;
