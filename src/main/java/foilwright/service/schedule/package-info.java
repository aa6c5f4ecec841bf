/**
 * Two clocks: hands, which do one thing at a time, and the chemistry in every foil, which runs from
 * the end of its placing to the end of its removal and must stay inside a window.
 *
 * <p>Nothing here knows heads or hair: a foil is a row of times. Times are minutes from the moment
 * the hands begin; inside they are whole milliseconds, so that sums are exact.
 */
package foilwright.service.schedule;
