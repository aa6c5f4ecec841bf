package foilwright.look;

import foilwright.hair.Level;

/**
 * A colour as light, and how different two of them look.
 *
 * @param red linear light, 0 to 1, in the primaries of sRGB (IEC 61966-2-1)
 * @param green the same
 * @param blue the same
 */
public record Colour(double red, double green, double blue) {
  /** White of CIE illuminant D65 as the sum of the columns of the sRGB matrix, Y = 1. */
  private static final double WHITE_X = 0.9504559270516716;

  private static final double WHITE_Z = 1.0890577507598784;

  /**
   * Depths 1 to 10 of hair without red or gold. The table is this program's own: no published one
   * by level was found. Levels 1 and 4 lie about tresses that were measured, black of L* 18.4 and
   * dark brown of L* 23.0 (J. Cosmet. Sci. 51 (2000) 293, D65, 10 degrees); lighter ones rise by
   * about 8 in L* to near white, chosen by eye.
   */
  private static final int[] LEVELS = {
    0x171311, 0x211916, 0x2d211b, 0x3d2c22, 0x523b2b, 0x6b4e38, 0x886748, 0xa6845e, 0xc5a67c,
    0xdfc9a3
  };

  public Colour {
    if (!(red >= 0 && green >= 0 && blue >= 0)) {
      throw new IllegalArgumentException(
          "light " + red + ", " + green + ", " + blue + " is less than none");
    }
  }

  /** From eight bits each of red, green and blue, red highest. */
  public static Colour ofRgb(int rgb) {
    return new Colour(
        linear((rgb >> 16 & 0xff) / 255.0),
        linear((rgb >> 8 & 0xff) / 255.0),
        linear((rgb & 0xff) / 255.0));
  }

  /** Hair of a depth with a tone. */
  public static Colour ofHair(Level level, Tone tone) {
    return ofHair(level.number(), tone);
  }

  /** Hair of a depth from 1 to 10, between two levels their light mixed, with a tone. */
  static Colour ofHair(double depth, Tone tone) {
    int lower = Math.min((int) depth, Level.MOST - 1);
    return ofRgb(LEVELS[lower - 1]).towards(ofRgb(LEVELS[lower]), depth - lower).toned(tone);
  }

  private Colour toned(Tone tone) {
    double warm = tone.warmth();
    return new Colour(
        Math.min(1, red * (1 + 0.10 * warm)), green, Math.max(0, blue * (1 - 0.22 * warm)));
  }

  /** Light mixed with another's: 0 gives this, 1 the other. */
  public Colour towards(Colour other, double share) {
    return new Colour(
        red + (other.red - red) * share,
        green + (other.green - green) * share,
        blue + (other.blue - blue) * share);
  }

  /** Eight bits each of red, green and blue, red highest; light beyond white is cut. */
  public int toRgb() {
    return byteOf(red) << 16 | byteOf(green) << 8 | byteOf(blue);
  }

  private static int byteOf(double light) {
    return (int) Math.round(255 * encoded(Math.min(Math.max(light, 0), 1)));
  }

  /** The transfer function of IEC 61966-2-1, value to light. */
  static double linear(double value) {
    return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
  }

  /** The transfer function of IEC 61966-2-1, light to value. */
  static double encoded(double light) {
    return light <= 0.0031308 ? light * 12.92 : 1.055 * Math.pow(light, 1 / 2.4) - 0.055;
  }

  /** Lightness and the two opponent axes of CIE 1976, for the white of D65. */
  public record Lab(double l, double a, double b) {
    /**
     * The CIEDE2000 difference with all weights 1: about 1 is just seen side by side.
     *
     * <p>Source of formula and test pairs: Sharma, Wu and Dalal, Color Research and Application 30
     * (2005) 21-30.
     */
    public double difference(Lab other) {
      double chroma = (Math.hypot(a, b) + Math.hypot(other.a, other.b)) / 2;
      double seventh = Math.pow(chroma, 7);
      double g = 0.5 * (1 - Math.sqrt(seventh / (seventh + Math.pow(25, 7))));
      double a1 = (1 + g) * a;
      double a2 = (1 + g) * other.a;
      double c1 = Math.hypot(a1, b);
      double c2 = Math.hypot(a2, other.b);
      double h1 = hue(a1, b);
      double h2 = hue(a2, other.b);
      double dh = h2 - h1;
      double mean = h1 + h2;
      if (c1 * c2 == 0) {
        dh = 0;
      } else {
        dh = dh > 180 ? dh - 360 : dh < -180 ? dh + 360 : dh;
        boolean apart = Math.abs(h1 - h2) > 180;
        mean = !apart ? mean / 2 : mean < 360 ? (mean + 360) / 2 : (mean - 360) / 2;
      }
      double dL = other.l - l;
      double dC = c2 - c1;
      double dH = 2 * Math.sqrt(c1 * c2) * Math.sin(Math.toRadians(dh) / 2);
      Scales scales = new Scales((l + other.l) / 2, (c1 + c2) / 2, mean);
      return Math.sqrt(scales.product(dL, dC, dH, dL, dC, dH));
    }

    /** The step from another to this. */
    Lab minus(Lab other) {
      return new Lab(l - other.l, a - other.a, b - other.b);
    }

    /** On the straight way to another: 0 gives this, 1 the other. */
    Lab towards(Lab other, double share) {
      return new Lab(
          l + (other.l - l) * share, a + (other.a - a) * share, b + (other.b - b) * share);
    }

    /**
     * The product of two small steps from this colour, such that of one with itself is the square
     * of the CIEDE2000 difference between two colours so far apart about this one, to first order.
     * It is linear in each step.
     *
     * @param one differences of l, a and b
     * @param two the same
     */
    double product(Lab one, Lab two) {
      double chroma = Math.hypot(a, b);
      double seventh = Math.pow(chroma, 7);
      double stretch = 1 + 0.5 * (1 - Math.sqrt(seventh / (seventh + Math.pow(25, 7))));
      double c = Math.hypot(stretch * a, b);
      double cos = c > 0 ? stretch * a / c : 1;
      double sin = c > 0 ? b / c : 0;
      return new Scales(l, c, hue(stretch * a, b))
          .product(
              one.l,
              cos * stretch * one.a + sin * one.b,
              cos * one.b - sin * stretch * one.a,
              two.l,
              cos * stretch * two.a + sin * two.b,
              cos * two.b - sin * stretch * two.a);
    }

    private static double hue(double a, double b) {
      if (a == 0 && b == 0) {
        return 0;
      }
      double degrees = Math.toDegrees(Math.atan2(b, a));
      return degrees < 0 ? degrees + 360 : degrees;
    }
  }

  /** How CIEDE2000 weighs differences in lightness, chroma and hue about a colour. */
  private static final class Scales {
    private final double sL;
    private final double sC;
    private final double sH;
    private final double rT;

    Scales(double l, double cm, double mean) {
      double light = l - 50;
      double t =
          1
              - 0.17 * cos(mean - 30)
              + 0.24 * cos(2 * mean)
              + 0.32 * cos(3 * mean + 6)
              - 0.20 * cos(4 * mean - 63);
      sL = 1 + 0.015 * light * light / Math.sqrt(20 + light * light);
      sC = 1 + 0.045 * cm;
      sH = 1 + 0.015 * cm * t;
      double cm7 = Math.pow(cm, 7);
      double bend = (mean - 275) / 25;
      double turn = Math.toRadians(60 * Math.exp(-bend * bend));
      rT = -2 * Math.sqrt(cm7 / (cm7 + Math.pow(25, 7))) * Math.sin(turn);
    }

    double product(double l1, double c1, double h1, double l2, double c2, double h2) {
      double v1 = c1 / sC;
      double w1 = h1 / sH;
      double v2 = c2 / sC;
      double w2 = h2 / sH;
      return l1 * l2 / (sL * sL) + v1 * v2 + w1 * w2 + rT / 2 * (v1 * w2 + v2 * w1);
    }

    private static double cos(double degrees) {
      return Math.cos(Math.toRadians(degrees));
    }
  }

  /** As CIE 1976 L*a*b*. */
  public Lab toLab() {
    // Primaries and white of IEC 61966-2-1, solved for the matrix to full precision.
    double x = 0.4123907992659593 * red + 0.357584339383878 * green + 0.1804807884018343 * blue;
    double y = 0.21263900587151024 * red + 0.715168678767756 * green + 0.07219231536073371 * blue;
    double z = 0.01933081871559182 * red + 0.11919477979462598 * green + 0.9505321522496607 * blue;
    double fx = root(x / WHITE_X);
    double fy = root(y);
    double fz = root(z / WHITE_Z);
    return new Lab(116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz));
  }

  private static double root(double t) {
    return t > 216.0 / 24389 ? Math.cbrt(t) : (24389.0 / 27 * t + 16) / 116;
  }
}
