package foilwright.look;

/**
 * What shows in one view, of each of two halves of the hair that were drawn independently. The mean
 * of the product of what both differ by from their means is that of what is there: chance, which is
 * each half's own, falls out of it however few hairs there are.
 */
record Halves(FigureMap first, FigureMap second) {
  Window window() {
    return first.window;
  }

  int width() {
    return first.width;
  }

  int height() {
    return first.height;
  }
}
