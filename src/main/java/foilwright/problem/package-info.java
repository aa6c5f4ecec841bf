/**
 * What is wrong or worth knowing, said so that a colourist can act on it: a stable code, a
 * severity, where it is (document path, and place on the head in the head frame, millimetres), what
 * is wrong, and the cure.
 */
package foilwright.problem;
