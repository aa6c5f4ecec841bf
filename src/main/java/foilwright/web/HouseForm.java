package foilwright.web;

import foilwright.app.Draft;
import foilwright.pattern.MixSlot;
import foilwright.service.PaceEntry;
import foilwright.service.PriceRule;
import foilwright.service.ProductKind;
import foilwright.web.FormField.Choice;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/** A house's fields: paces, products, toners, foils, prices, scale, and what it goes by. */
final class HouseForm {
  private final Draft draft;
  private final Form form;

  private HouseForm(Draft draft, LengthUnit unit) {
    this.draft = draft;
    form = new Form(draft, unit);
  }

  static Form of(Draft draft, LengthUnit unit) {
    HouseForm house = new HouseForm(draft, unit);
    for (int i = 0; i < draft.count("paces"); i++) {
      house.pace(i);
    }
    for (int i = 0; i < draft.count("products"); i++) {
      house.product(i);
    }
    house.slots();
    for (int i = 0; i < draft.count("toners"); i++) {
      house.toner(i);
    }
    for (int i = 0; i < draft.count("foils"); i++) {
      house.foil(i);
    }
    house.prices();
    house.scale();
    house.rules();
    return house.form;
  }

  private void pace(int i) {
    String p = "paces[" + i + "].";
    form.group(
            "pace-" + i,
            "Pace: " + draft.text(p + "name"),
            "Minutes for each thing that hands do: a quick day, a usual one, a slow one."
                + " Used for placing time, both clocks and the appointment.")
        .text(p + "name", "Name of the pace", "")
        .quantity(p + "daySpread", "Spread from day to day", "%", "1", "of all times together");
    for (PaceEntry entry : PaceEntry.values()) {
      String t = p + "times." + entry.key() + ".";
      String words =
          entry.words().substring(0, 1).toUpperCase(Locale.ROOT) + entry.words().substring(1);
      form.quantity(t + "quick", words + ": quick", "min", "", "")
          .quantity(t + "usual", words + ": usual", "min", "", "")
          .quantity(t + "slow", words + ": slow", "min", "", "");
    }
    copies("paces", i, "pace");
  }

  private void copies(String list, int i, String word) {
    form.act(
        "copy " + list + " " + i,
        "Another " + word + " like this",
        d -> {
          Draft more = d.inserted(list, i + 1, d.find(list + "[" + i + "]").orElseThrow());
          String name = list + "[" + (i + 1) + "].name";
          return more.with(name, more.text(name) + " 2");
        });
    if (draft.count(list) > 1) {
      form.act(
          "remove " + list + " " + i, "Remove this " + word, d -> d.without(list + "[" + i + "]"));
    }
  }

  private void product(int i) {
    String p = "products[" + i + "].";
    form.group(
        "product-" + i,
        "Product: " + draft.text(p + "name"),
        "From the maker's sheet, which comes first. The window says how long a foil may stay;"
            + " take-up says how much mix a foil takes.");
    form.field(
            new FormField(
                p + "name",
                FormField.Look.TYPED,
                "Name of the entry",
                draft.text(p + "name"),
                "",
                "",
                "a plain name; slots that hold it follow",
                List.of(),
                "",
                ""),
            (d, text) -> renamed(d, i, text))
        .choice(
            p + "kind",
            "Kind",
            "",
            Arrays.stream(ProductKind.values()).map(ProductKind::words).toList())
        .text(p + "ratio", "Product to developer, by weight", "such as 1 : 2")
        .quantity(
            p + "developer",
            "Peroxide of the developer",
            "%",
            "",
            "as its label says; 20 vol may be typed too")
        .quantity(p + "window.least", "A foil stays at least", "min", "1", "")
        .quantity(p + "window.most", "A foil stays at most", "min", "1", "")
        .quantity(p + "bowlLife", "A bowl stands at most", "min", "1", "then a fresh one is mixed")
        .quantity(p + "checkEvery", "Check every", "min", "1", "empty: 10 min")
        .quantity(
            p + "takeUp.film",
            "Take-up: film on the foil",
            "g",
            "0.1",
            "mix that any foil takes",
            (d, text) -> takeUp(d, p, "film", text))
        .field(
            new FormField(
                p + "takeUp.perGramOfHair",
                FormField.Look.TYPED,
                "Take-up: grams for a gram of hair",
                draft.text(p + "takeUp.perGramOfHair"),
                "",
                "0.1",
                "",
                List.of(),
                "",
                ""),
            (d, text) -> takeUp(d, p, "perGramOfHair", Form.number(text)));
    for (int k = 0; k < draft.count(p + "windowByLift"); k++) {
      String w = p + "windowByLift[" + k + "].";
      String levels = "Lift of " + draft.text(w + "levels") + ": ";
      form.quantity(w + "least", levels + "at least", "min", "1", "")
          .quantity(w + "most", levels + "at most", "min", "1", "");
    }
    form.choice(
        p + "makersSheetOnFile",
        "Maker's sheet on file",
        draft.text(p + "makersSheetOnFile"),
        "",
        List.of(new Choice("true", "yes"), new Choice("false", "no, MISSING")),
        (d, text) -> d.with(p + "makersSheetOnFile", text.equals("true")));
    int weighed = draft.count(p + "takeUp.weighBacks");
    if (weighed > 0) {
      form.act(
          "unweigh " + i,
          "Take the last of " + weighed + " weighings out",
          d -> d.without(p + "takeUp.weighBacks[" + (weighed - 1) + "]"));
    }
    copies("products", i, "product");
  }

  private static Draft takeUp(Draft d, String p, String key, Object value) {
    Draft now = d;
    if (d.keys(p + "takeUp").isEmpty()) {
      now =
          now.with(p + "takeUp.film", "0.9 g")
              .with(p + "takeUp.perGramOfHair", new BigDecimal("1.2"));
    }
    return now.with(p + "takeUp." + key, value);
  }

  private static Draft renamed(Draft d, int product, String name) {
    String old = d.text("products[" + product + "].name");
    Draft now = d.with("products[" + product + "].name", name);
    for (String slot : d.keys("slots")) {
      if (d.text("slots." + slot).equals(old)) {
        now = now.with("slots." + slot, name);
      }
    }
    return now;
  }

  private void slots() {
    form.group(
        "slots", "What each mix holds", "Patterns name mixes by letter; here they get a product.");
    List<String> products = new ArrayList<>();
    for (int i = 0; i < draft.count("products"); i++) {
      products.add(draft.text("products[" + i + "].name"));
    }
    for (MixSlot slot : MixSlot.values()) {
      form.choice(
          "slots." + slot.name(),
          "Mix " + slot.name(),
          slot == MixSlot.A ? "" : "nothing",
          products);
    }
  }

  private void toner(int i) {
    String t = "toners[" + i + "].";
    form.group(
            "toner-" + i,
            "Toner: " + draft.text(t + "name"),
            "The first toner of the house is planned.")
        .text(t + "name", "Name of the toner", "")
        .text(t + "ratio", "Toner to developer, by weight", "such as 1 : 2")
        .quantity(t + "developer", "Peroxide of its developer", "%", "", "")
        .quantity(t + "window.least", "Stays at least", "min", "1", "")
        .quantity(t + "window.most", "Stays at most", "min", "1", "");
    for (int k = 0; k < draft.count(t + "shades"); k++) {
      String s = t + "shades[" + k + "].";
      form.text(s + "shade", "Shade " + (k + 1), "")
          .number(s + "parts", "Parts of shade " + (k + 1), "", "1", "by weight");
    }
  }

  private void foil(int i) {
    String f = "foils[" + i + "].";
    form.group(
            "foil-" + i,
            "Foil in the drawer: " + draft.text(f + "name"),
            i == 0 ? "This first size is used for plans." : "")
        .text(f + "name", "Name of the size", "")
        .length(f + "width", "Width", "")
        .length(f + "usableWidth", "Usable width", "hair lies on so much of it")
        .length(f + "length", "Length", "folded or doubled for longer hair");
    if (i > 0) {
      form.act("first " + i, "Use this size first", d -> d.moved("foils", i, 0));
    }
    copies("foils", i, "size");
  }

  private void prices() {
    String currency = draft.text("prices.currency");
    form.group("prices", "Prices", "Used for the quote; the rule says which price is quoted.")
        .choice(
            "prices.quoteBy",
            "Quote by",
            PriceRule.BAND.words(),
            Arrays.stream(PriceRule.values()).map(PriceRule::words).toList())
        .quantity("prices.perFoil", "A foil", currency, "", "")
        .quantity("prices.perHour", "An hour of the chair", currency, "", "")
        .quantity("prices.perBowl", "A bowl", currency, "", "")
        .quantity("prices.toner", "Toner", currency, "", "");
    for (int k = 0; k < draft.count("prices.bands"); k++) {
      String b = "prices.bands[" + k + "].";
      form.text(b + "name", "Band " + (k + 1), "")
          .number(b + "mostFoils", "Band " + (k + 1) + ": foils at most", "", "1", "")
          .quantity(b + "price", "Band " + (k + 1) + ": price", currency, "", "");
    }
    form.field(
        new FormField(
            "prices.currency",
            FormField.Look.TYPED,
            "Currency",
            currency,
            "",
            "",
            "three capital letters; all prices follow",
            List.of(),
            "",
            ""),
        HouseForm::currency);
  }

  private static Draft currency(Draft d, String to) {
    String from = d.text("prices.currency");
    Draft now = d.with("prices.currency", to);
    List<String> prices =
        Stream.concat(
                Stream.of("perFoil", "perHour", "perBowl", "toner"),
                Stream.iterate(0, k -> k + 1)
                    .limit(d.count("prices.bands"))
                    .map(k -> "bands[" + k + "].price"))
            .map(key -> "prices." + key)
            .toList();
    for (String price : prices) {
      now = now.with(price, d.text(price).replace(from, to));
    }
    return now;
  }

  private void scale() {
    form.group(
            "mixing",
            "Scale, bowls and peroxide on the shelf",
            "Used for what to weigh into each bowl.")
        .quantity("mixing.scaleStep", "Step of the scale", "g", "0.5", "empty: 1 g")
        .quantity("mixing.waste", "Mixed beyond what foils take", "%", "1", "empty: usual")
        .number("mixing.bowlFoils", "Foils to a bowl at most", "", "1", "empty: usual")
        .list(
            "mixing.developers",
            "Peroxide on the shelf",
            "percent with commas between, such as 1.9 %, 6 %, 9 %; a strength in between is blended");
  }

  private void rules() {
    form.group(
            "rules",
            "What the house goes by",
            "Hands, marking of practice work, when guests are asked back, lift.")
        .length("hands.thinnestSlice", "Thinnest slice that a comb holds", "empty: usual")
        .length("hands.thickestSlice", "Thickest slice that a foil takes", "empty: usual")
        .length("tolerances.partingStraight", "Marking: parting straight to", "")
        .length("tolerances.slice", "Marking: slice to", "")
        .length("tolerances.background", "Marking: background to", "")
        .quantity("tolerances.angle", "Marking: angle to", "deg", "1", "")
        .length(
            "rebook.from",
            "Asked back from a regrowth of",
            "",
            (d, text) -> both(d, "rebook", "from", text, "to"))
        .length("rebook.to", "and up to", "", (d, text) -> both(d, "rebook", "to", text, "from"))
        .number(
            "lift.mostLevelsInOneVisit", "Levels lifted in one visit at most", "", "1", "empty: 4")
        .quantity(
            "head.parietalRidge",
            "Slope at the parietal ridge",
            "deg",
            "1",
            "20 to 60; empty: usual")
        .quantity(
            "head.occipitalLine",
            "Slope at the occipital line",
            "deg",
            "1",
            "-20 to 15; empty: usual");
  }

  private static Draft both(Draft d, String group, String key, String text, String other) {
    if (text.isEmpty()) {
      return d.without(group);
    }
    Map<String, Object> now = new LinkedHashMap<>();
    now.put(other, d.text(group + "." + other).isEmpty() ? text : d.text(group + "." + other));
    now.put(key, text);
    return d.with(group, now);
  }
}
