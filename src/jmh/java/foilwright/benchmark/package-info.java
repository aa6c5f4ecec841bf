/**
 * How long the work takes that a person waits for. Each benchmark states the work that it measures
 * and the time aimed at, warm and on one core of an ordinary laptop.
 */
package foilwright.benchmark;
