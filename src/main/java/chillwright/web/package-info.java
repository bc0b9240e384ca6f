/**
 * Everything that speaks HTTP. {@link chillwright.web.Server} starts it; {@code Routes} lists every
 * address; {@code Guard} is asked first; the handlers parse, call and render. What is wrong with a
 * request is a {@code RequestFault}, and {@code Problems} tells each as a problem document.
 */
package chillwright.web;
