/**
 * Surfaces that carry scalar fields, and regions of them.
 *
 * <p>A {@link foilwright.geometry.surface.TriangleMesh} approximates a smooth surface; fields are
 * linear in each triangle; a {@link foilwright.geometry.surface.Region} is a set of convex
 * fragments of triangles, cut exactly where a field crosses a bound, so that the areas of the parts
 * of a region add up to the area of the whole to rounding. Head frame, millimetres. What the mesh
 * itself leaves out (the sagitta between its flat triangles and the smooth surface, about 0.01 mm
 * at an edge of 2.5 mm on a head) is the accuracy of every position; areas of large regions are low
 * by about 1e-4.
 */
package foilwright.geometry.surface;
