package foilwright.service.mix;

import foilwright.placement.PlacedFoil;
import foilwright.problem.Problem;
import foilwright.service.FoilStock;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/**
 * Foil to cut before the work begins: for every foil the narrowest size whose usable width holds
 * it, and how sheets are laid for the length of its treated hair. Common practice, no source.
 *
 * @param foils in working order
 * @param counts by size in the order of the drawer, then by way of laying
 * @param problems foils that no size holds
 */
public record FoilSheets(List<Cut> foils, List<Count> counts, List<Problem> problems) {

  /** How sheets are laid round the hair of one foil. */
  public enum Laying {
    /** One sheet under and folded over: the treated hair is at most half a sheet long. */
    FOLDED("one sheet, folded over", 1),
    /** One under, one over: at most a sheet long. */
    TWO("two sheets, one under and one over", 2),
    /** One under, one over, the ends of the hair turned back between them: longer than a sheet. */
    TWO_TURNED_BACK("two sheets, the ends of the hair turned back", 2);

    private final String words;
    private final int sheets;

    Laying(String words, int sheets) {
      this.words = words;
      this.sheets = sheets;
    }

    /** The words used on sheets. */
    public String words() {
      return words;
    }

    /** Sheets for one foil. */
    public int sheets() {
      return sheets;
    }

    /** For hair treated over so much, in a sheet so long. */
    static Laying of(Length treated, Length sheet) {
      if (treated.compareTo(sheet.times(0.5)) <= 0) {
        return FOLDED;
      }
      return treated.compareTo(sheet) <= 0 ? TWO : TWO_TURNED_BACK;
    }
  }

  /** What one foil takes. */
  public record Cut(int number, FoilStock stock, Laying laying) {
    public Cut {
      Objects.requireNonNull(stock);
      Objects.requireNonNull(laying);
    }
  }

  /** Foils of one size laid one way. */
  public record Count(FoilStock stock, Laying laying, int foils) {
    public int sheets() {
      return foils * laying.sheets();
    }
  }

  public FoilSheets {
    foils = List.copyOf(foils);
    counts = List.copyOf(counts);
    problems = List.copyOf(problems);
  }

  /** Length of hair in a foil that carries product: from where it starts to the tips. */
  public static Length treated(PlacedFoil foil) {
    Length left = foil.hairLength().minus(foil.startFromScalp());
    return left.compareTo(Length.ZERO) < 0 ? Length.ZERO : left;
  }

  /**
   * @param stock sizes in the drawer, at least one
   */
  public static FoilSheets of(List<PlacedFoil> foils, List<FoilStock> stock) {
    List<FoilStock> narrowestFirst =
        stock.stream().sorted(Comparator.comparing(FoilStock::usableWidth)).toList();
    if (stock.isEmpty()) {
      throw new IllegalArgumentException("no foil in the drawer");
    }
    FoilStock widest = narrowestFirst.get(stock.size() - 1);
    List<Cut> cuts = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    for (PlacedFoil foil : foils) {
      FoilStock size =
          narrowestFirst.stream()
              .filter(s -> foil.width().minus(s.usableWidth()).toMillimetres() < 1e-6)
              .findFirst()
              .orElse(widest);
      if (foil.width().minus(size.usableWidth()).toMillimetres() >= 1e-6) {
        problems.add(
            Problem.warning(
                    "foil-wider-than-stock",
                    "foils",
                    "foil "
                        + foil.number()
                        + " is "
                        + foil.width()
                        + " wide, more than the "
                        + widest.usableWidth()
                        + " that the widest foil in the drawer holds",
                    "cut wider foil, or let the pattern divide the slice")
                .at(foil.centre()));
      }
      cuts.add(new Cut(foil.number(), size, Laying.of(treated(foil), size.length())));
    }
    List<Count> counts = new ArrayList<>();
    for (FoilStock size : stock) {
      for (Laying laying : Laying.values()) {
        long of = cuts.stream().filter(c -> c.stock().equals(size) && c.laying() == laying).count();
        if (of > 0) {
          counts.add(new Count(size, laying, (int) of));
        }
      }
    }
    return new FoilSheets(cuts, counts, problems);
  }
}
