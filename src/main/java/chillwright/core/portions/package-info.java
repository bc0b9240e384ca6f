/**
 * From guests to pots and pans: portions to volume, volume to pans, pans to shelves, and the ladle
 * or scoop that serves a portion. Start with {@link chillwright.core.portions.Pan}. Volumes are US
 * fluid ounces and lengths inches, as the trade's tables print them.
 */
package chillwright.core.portions;
