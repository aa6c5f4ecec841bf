package foilwright.document;

import foilwright.head.HeadSettings;
import foilwright.service.FoilStock;
import foilwright.service.Learning;
import foilwright.service.LiftTables;
import foilwright.service.LiftWindow;
import foilwright.service.MixRatio;
import foilwright.service.MixSettings;
import foilwright.service.PaceProfile;
import foilwright.service.Prices;
import foilwright.service.ProductEntry;
import foilwright.service.RebookLengths;
import foilwright.service.TakeUp;
import foilwright.service.TimeWindow;
import foilwright.service.Tolerances;
import foilwright.service.TonerEntry;
import java.math.BigDecimal;
import java.util.Map;

/** Houses to documents, every value written out. */
final class HouseWriter {
  private HouseWriter() {}

  static Map<String, Object> write(HouseDocument house) {
    Json.Group slots = new Json.Group();
    house.slots().forEach((slot, product) -> slots.put(slot.name(), product));
    return new Json.Group()
        .put("format", Format.HOUSE.text())
        .put("name", house.name())
        .put("paces", house.paces().stream().map(HouseWriter::pace).toList())
        .put("products", house.products().stream().map(HouseWriter::product).toList())
        .putIf(
            !house.toners().isEmpty(),
            "toners",
            house.toners().stream().map(HouseWriter::toner).toList())
        .put("slots", slots.toMap())
        .put("foils", house.foils().stream().map(HouseWriter::foil).toList())
        .put("prices", prices(house.prices()))
        .put("tolerances", tolerances(house.tolerances()))
        .put("head", head(house.head()))
        .put("hands", hands(house.hands()))
        .put("rebook", rebook(house.rebook()))
        .put("mixing", mixing(house.mixing()))
        .put("lift", lift(house.lift()))
        .toMap();
  }

  private static Map<String, Object> pace(PaceProfile pace) {
    Json.Group times = new Json.Group();
    pace.times()
        .forEach(
            (entry, time) ->
                times.put(
                    entry.key(),
                    new Json.Group()
                        .put("quick", Kind.MINUTES.write(time.quick()))
                        .put("usual", Kind.MINUTES.write(time.usual()))
                        .put("slow", Kind.MINUTES.write(time.slow()))
                        .toMap()));
    return new Json.Group()
        .put("name", pace.name())
        .put("basis", pace.basis())
        .put("daySpread", Kind.SHARE.write(pace.daySpread()))
        .put("times", times.toMap())
        .putIf(
            !pace.timings().isEmpty(),
            "timings",
            pace.timings().stream().map(HouseWriter::timing).toList())
        .putIf(!pace.learning().equals(Learning.NONE), "learning", learning(pace.learning()))
        .toMap();
  }

  private static Map<String, Object> timing(PaceProfile.Timing timing) {
    Json.Group group =
        new Json.Group()
            .put("planned", Kind.MINUTES.write(timing.planned()))
            .put("took", Kind.MINUTES.write(timing.took()))
            .put("foils", timing.foils());
    timing.date().ifPresent(date -> group.put("date", date.toString()));
    return group.toMap();
  }

  private static Map<String, Object> learning(Learning learning) {
    return new Json.Group()
        .put("rate", Kind.SHARE.write(learning.rate()))
        .put("timedAt", learning.timedAt())
        .put("foilsDone", learning.foilsDone())
        .toMap();
  }

  private static Map<String, Object> product(ProductEntry product) {
    return new Json.Group()
        .put("name", product.name())
        .put("kind", product.kind().words())
        .put("ratio", ratio(product.ratio()))
        .put("developer", Kind.STRENGTH.write(product.developerStrength()))
        .put("window", window(product.window()))
        .putIf(
            !product.windowsByLift().isEmpty(),
            "windowByLift",
            product.windowsByLift().stream().map(HouseWriter::liftWindow).toList())
        .put("bowlLife", Kind.MINUTES.write(product.bowlLife()))
        .put("takeUp", takeUp(product.takeUp()))
        .put("checkEvery", Kind.MINUTES.write(product.checkEvery()))
        .put("makersSheetOnFile", product.makersSheetOnFile())
        .toMap();
  }

  private static Map<String, Object> takeUp(TakeUp takeUp) {
    return new Json.Group()
        .put("film", Kind.MASS.write(takeUp.film()))
        .put("perGramOfHair", takeUp.perGramOfHair())
        .putIf(
            !takeUp.weighBacks().isEmpty(),
            "weighBacks",
            takeUp.weighBacks().stream().map(HouseWriter::weighBack).toList())
        .toMap();
  }

  private static Map<String, Object> weighBack(TakeUp.WeighBack weighed) {
    Json.Group group =
        new Json.Group()
            .put("planned", Kind.MASS.write(weighed.planned()))
            .put("used", Kind.MASS.write(weighed.used()));
    weighed.date().ifPresent(date -> group.put("date", date.toString()));
    return group.toMap();
  }

  private static Map<String, Object> liftWindow(LiftWindow part) {
    return new Json.Group()
        .put("levels", part.levels())
        .put("least", Kind.MINUTES.write(part.window().least()))
        .put("most", Kind.MINUTES.write(part.window().most()))
        .toMap();
  }

  private static Map<String, Object> mixing(MixSettings mixing) {
    return new Json.Group()
        .put("scaleStep", Kind.MASS.write(mixing.scaleStep()))
        .put("waste", Kind.SHARE.write(mixing.waste()))
        .put("bowlFoils", mixing.bowlFoils())
        .put("developers", mixing.developers().stream().map(Kind.STRENGTH::write).toList())
        .toMap();
  }

  private static Map<String, Object> lift(LiftTables lift) {
    return new Json.Group()
        .put("exposedWarmth", lift.exposedWarmth())
        .put("mostLevelsInOneVisit", lift.mostLevelsInOneVisit())
        .toMap();
  }

  private static String ratio(MixRatio ratio) {
    return Item.plain(ratio.product()) + " : " + Item.plain(ratio.developer());
  }

  private static Map<String, Object> window(TimeWindow window) {
    return new Json.Group()
        .put("least", Kind.MINUTES.write(window.least()))
        .put("most", Kind.MINUTES.write(window.most()))
        .toMap();
  }

  private static Map<String, Object> toner(TonerEntry toner) {
    return new Json.Group()
        .put("name", toner.name())
        .put(
            "shades",
            toner.shades().stream()
                .map(s -> new Json.Group().put("shade", s.shade()).put("parts", s.parts()).toMap())
                .toList())
        .put("ratio", ratio(toner.ratio()))
        .put("developer", Kind.STRENGTH.write(toner.developerStrength()))
        .put("window", window(toner.window()))
        .put(
            "amount",
            new Json.Group()
                .put("base", Kind.MASS.write(toner.base()))
                .put("perGramOfHair", toner.perGramOfHair())
                .toMap())
        .put(
            "saturation",
            toner.saturation().stream()
                .map(
                    step ->
                        new Json.Group()
                            .put("at", Kind.MINUTES.write(step.at()))
                            .put("words", step.words())
                            .toMap())
                .toList())
        .toMap();
  }

  private static Map<String, Object> foil(FoilStock foil) {
    return new Json.Group()
        .put("name", foil.name())
        .put("width", Kind.LENGTH.write(foil.width()))
        .put("usableWidth", Kind.LENGTH.write(foil.usableWidth()))
        .put("length", Kind.LENGTH.write(foil.length()))
        .toMap();
  }

  private static Map<String, Object> prices(Prices prices) {
    String currency = prices.currency();
    return new Json.Group()
        .put("currency", currency)
        .put("perFoil", money(prices.perFoil(), currency))
        .putIf(
            !prices.bands().isEmpty(),
            "bands",
            prices.bands().stream()
                .map(
                    band ->
                        new Json.Group()
                            .put("name", band.name())
                            .put("mostFoils", band.mostFoils())
                            .put("price", money(band.price(), currency))
                            .toMap())
                .toList())
        .put("perHour", money(prices.perHour(), currency))
        .put("perBowl", money(prices.perBowl(), currency))
        .put("toner", money(prices.toner(), currency))
        .put("quoteBy", prices.quoteBy().words())
        .toMap();
  }

  private static String money(BigDecimal amount, String currency) {
    return amount.toPlainString() + " " + currency;
  }

  private static Map<String, Object> tolerances(Tolerances tolerances) {
    return new Json.Group()
        .put("partingStraight", Kind.LENGTH.write(tolerances.partingStraight()))
        .put("slice", Kind.LENGTH.write(tolerances.slice()))
        .put("background", Kind.LENGTH.write(tolerances.background()))
        .put("angle", Kind.ANGLE.write(tolerances.angle()))
        .put("foilsBetweenSides", tolerances.foilsBetweenSides())
        .toMap();
  }

  private static Map<String, Object> head(HeadSettings head) {
    return new Json.Group()
        .put("occipitalLine", Kind.ANGLE.write(head.occipitalElevation()))
        .put("parietalRidge", Kind.ANGLE.write(head.ridgeElevation()))
        .put("fringeDepth", Kind.SHARE.write(head.fringeDepth()))
        .put("meshEdge", Kind.LENGTH.write(head.meshEdge()))
        .toMap();
  }

  private static Map<String, Object> hands(HandAllowances hands) {
    return new Json.Group()
        .put("thinnestSlice", Kind.LENGTH.write(hands.thinnestSlice()))
        .put("thickestSlice", Kind.LENGTH.write(hands.thickestSlice()))
        .toMap();
  }

  private static Map<String, Object> rebook(RebookLengths lengths) {
    return new Json.Group()
        .put("from", Kind.LENGTH.write(lengths.from()))
        .put("to", Kind.LENGTH.write(lengths.to()))
        .toMap();
  }
}
