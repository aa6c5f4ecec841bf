package foilwright.drawing;

/**
 * An opaque colour, sRGB.
 *
 * @param rgb red, green and blue, eight bits each, red highest
 */
public record Ink(int rgb) {
  /** Lines and text. */
  public static final Ink BLACK = new Ink(0x1f1d1a);

  public static final Ink PAPER = new Ink(0xffffff);

  public Ink {
    if (rgb < 0 || rgb > 0xffffff) {
      throw new IllegalArgumentException("a colour has 24 bits, not " + rgb);
    }
  }

  public int red() {
    return rgb >> 16;
  }

  public int green() {
    return rgb >> 8 & 0xff;
  }

  public int blue() {
    return rgb & 0xff;
  }

  /** This colour mixed with another; 0 gives this, 1 the other, evenly in sRGB values. */
  public Ink towards(Ink other, double share) {
    return new Ink(
        mix(red(), other.red(), share) << 16
            | mix(green(), other.green(), share) << 8
            | mix(blue(), other.blue(), share));
  }

  private static int mix(int from, int to, double share) {
    return (int) Math.round(from + (to - from) * share);
  }

  /** The grey of the same luminance. */
  public Ink grey() {
    double light = luminance();
    double s = light <= 0.03928 / 12.92 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055;
    int value = (int) Math.round(255 * Math.min(1, Math.max(0, s)));
    return new Ink(value << 16 | value << 8 | value);
  }

  /** Relative luminance, 0 black to 1 white, as the WCAG 2 contrast rule defines it. */
  public double luminance() {
    return 0.2126 * linear(red()) + 0.7152 * linear(green()) + 0.0722 * linear(blue());
  }

  private static double linear(int value) {
    double s = value / 255.0;
    return s <= 0.03928 ? s / 12.92 : Math.pow((s + 0.055) / 1.055, 2.4);
  }

  /** Contrast ratio, 1 to 21, as the WCAG 2 rule defines it; it holds for a grey print as well. */
  public double contrast(Ink other) {
    double a = luminance() + 0.05;
    double b = other.luminance() + 0.05;
    return Math.max(a, b) / Math.min(a, b);
  }
}
