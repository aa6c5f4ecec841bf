package foilwright.document;

import foilwright.hair.Level;
import foilwright.head.HeadSettings;
import foilwright.pattern.MixSlot;
import foilwright.service.FoilStock;
import foilwright.service.Learning;
import foilwright.service.LiftTables;
import foilwright.service.LiftWindow;
import foilwright.service.MixRatio;
import foilwright.service.MixSettings;
import foilwright.service.PaceEntry;
import foilwright.service.PaceProfile;
import foilwright.service.PriceRule;
import foilwright.service.Prices;
import foilwright.service.ProductEntry;
import foilwright.service.ProductKind;
import foilwright.service.RebookLengths;
import foilwright.service.TakeUp;
import foilwright.service.ThreePoint;
import foilwright.service.TimeWindow;
import foilwright.service.Tolerances;
import foilwright.service.TonerEntry;
import foilwright.units.Angle;
import foilwright.units.Length;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** House documents to houses. */
final class HouseReader {
  private static final Minutes NO_TIME = Minutes.ZERO;
  private static final Minutes A_DAY = Minutes.ofMinutes(600);
  private static final Minutes LEAST_TIMED = Minutes.ofMinutes(0.1);
  private static final Mass LEAST_WEIGHED = Mass.ofGrams(0.1);
  private static final Mass MOST_WEIGHED = Mass.ofGrams(10_000);
  private static final String DECIMAL = "(\\d{1,9}(?:\\.\\d{1,9})?)";
  private static final Pattern RATIO = Pattern.compile(DECIMAL + "\\s*:\\s*" + DECIMAL);
  private static final Pattern MONEY = Pattern.compile("(\\d{1,9}(?:\\.\\d{1,4})?)\\s+([A-Z]{3})");

  private HouseReader() {}

  static HouseDocument read(Node.ObjectNode root, ProblemLog problems) {
    Fields fields = new Fields(root, "", problems);
    fields.find("format");
    String name = fields.require("name").name();
    List<PaceProfile> paces =
        named(fields.require("paces"), 1, HouseReader::pace, PaceProfile::name);
    List<ProductEntry> products =
        named(fields.require("products"), 1, HouseReader::product, ProductEntry::name);
    List<TonerEntry> toners =
        fields
            .find("toners")
            .map(i -> named(i, 0, HouseReader::toner, TonerEntry::name))
            .orElse(List.of());
    Map<MixSlot, String> slots = slots(fields.require("slots"), products);
    List<FoilStock> foils = named(fields.require("foils"), 1, HouseReader::foil, FoilStock::name);
    Prices prices = prices(fields.require("prices"));
    Tolerances tolerances =
        fields.find("tolerances").map(HouseReader::tolerances).orElse(Tolerances.USUAL);
    HeadSettings head = fields.find("head").map(HouseReader::head).orElse(HeadSettings.USUAL);
    HandAllowances hands =
        fields.find("hands").map(HouseReader::hands).orElse(HandAllowances.USUAL);
    RebookLengths rebook =
        fields.find("rebook").map(HouseReader::rebook).orElse(RebookLengths.USUAL);
    MixSettings mixing = fields.find("mixing").map(HouseReader::mixing).orElse(MixSettings.USUAL);
    LiftTables lift = fields.find("lift").map(HouseReader::lift).orElse(LiftTables.USUAL);
    fields.close();
    return new HouseDocument(
        name,
        paces,
        products,
        toners,
        slots,
        foils,
        prices,
        tolerances,
        head,
        hands,
        rebook,
        mixing,
        lift);
  }

  /** Entries with a name each; a name that comes twice is a problem. */
  private static <T> List<T> named(
      Item list, int least, Function<Item, T> read, Function<T, String> name) {
    List<T> entries = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (Item item : list.items(least)) {
      T entry = read.apply(item);
      if (!names.add(name.apply(entry)) && !name.apply(entry).equals("?")) {
        item.error(
            "duplicate-name",
            "\"" + name.apply(entry) + "\" comes twice",
            "give each entry its own name");
      }
      entries.add(entry);
    }
    if (entries.isEmpty() && least > 0) {
      Item missing =
          new Item(new Node.NullNode(list.node().place()), list.path(), new ProblemLog());
      entries.add(read.apply(missing));
    }
    return entries;
  }

  private static PaceProfile pace(Item item) {
    Fields fields = item.fields();
    String name = fields.require("name").name();
    String basis = fields.require("basis").name();
    Share daySpread =
        fields
            .find("daySpread")
            .map(i -> i.quantity(Kind.SHARE, Share.ZERO, PaceProfile.MOST_DAY_SPREAD))
            .orElse(PaceProfile.USUAL_DAY_SPREAD);
    Fields entries = fields.require("times").fields();
    Map<PaceEntry, ThreePoint> times = new EnumMap<>(PaceEntry.class);
    for (PaceEntry entry : PaceEntry.values()) {
      times.put(entry, threePoint(entries.require(entry.key())));
    }
    entries.close();
    List<PaceProfile.Timing> timings =
        fields
            .find("timings")
            .map(i -> entries(i, PaceProfile.MOST_TIMINGS, HouseReader::timing))
            .orElse(List.of());
    Learning learning = fields.find("learning").map(HouseReader::learning).orElse(Learning.NONE);
    fields.close();
    return new PaceProfile(name, basis, times, daySpread, timings, learning);
  }

  /** A list with at most so many entries. */
  private static <T> List<T> entries(Item list, int most, Function<Item, T> read) {
    List<T> entries = list.items(0).stream().map(read).toList();
    if (entries.size() > most) {
      list.error(
          "out-of-range",
          "the list has " + entries.size() + " entries",
          "keep the newest " + most + " entries");
      return entries.subList(0, most);
    }
    return entries;
  }

  private static PaceProfile.Timing timing(Item item) {
    Fields fields = item.fields();
    PaceProfile.Timing timing =
        new PaceProfile.Timing(
            fields.require("planned").quantity(Kind.MINUTES, LEAST_TIMED, A_DAY),
            fields.require("took").quantity(Kind.MINUTES, LEAST_TIMED, A_DAY),
            fields.require("foils").wholeNumber(1, 1000),
            fields.find("date").flatMap(Item::date));
    fields.close();
    return timing;
  }

  private static Learning learning(Item item) {
    Fields fields = item.fields();
    Learning learning =
        new Learning(
            fields.require("rate").quantity(Kind.SHARE, Learning.LEAST_RATE, Learning.MOST_RATE),
            fields.require("timedAt").wholeNumber(1, Learning.MOST_FOILS),
            fields.require("foilsDone").wholeNumber(0, Learning.MOST_FOILS));
    fields.close();
    return learning;
  }

  private static ThreePoint threePoint(Item item) {
    Fields fields = item.fields();
    Minutes quick = time(fields.require("quick"));
    Minutes usual = time(fields.require("usual"));
    Minutes slow = time(fields.require("slow"));
    fields.close();
    return item.build(() -> new ThreePoint(quick, usual, slow), ThreePoint.NONE);
  }

  private static Minutes time(Item item) {
    return item.quantity(Kind.MINUTES, NO_TIME, A_DAY);
  }

  private static ProductEntry product(Item item) {
    Fields fields = item.fields();
    String name = fields.require("name").name();
    ProductKind kind = fields.require("kind").word(ProductKind.values(), ProductKind::words);
    MixRatio ratio = ratio(fields.require("ratio"));
    Share strength = strength(fields.require("developer"));
    TimeWindow window = window(fields.require("window"));
    Minutes bowlLife =
        fields.require("bowlLife").quantity(Kind.MINUTES, Minutes.ofMinutes(1), A_DAY);
    TakeUp takeUp = fields.find("takeUp").map(HouseReader::takeUp).orElse(TakeUp.USUAL);
    Minutes checkEvery =
        fields
            .find("checkEvery")
            .map(i -> i.quantity(Kind.MINUTES, Minutes.ofMinutes(1), A_DAY))
            .orElse(ProductEntry.USUAL_CHECK_EVERY);
    List<LiftWindow> byLift =
        fields
            .find("windowByLift")
            .map(i -> entries(i, 9, HouseReader::liftWindow))
            .orElse(List.of());
    boolean sheet = fields.require("makersSheetOnFile").yesOrNo();
    fields.close();
    Function<List<LiftWindow>, ProductEntry> product =
        windows ->
            new ProductEntry(
                name, kind, ratio, strength, window, windows, bowlLife, takeUp, checkEvery, sheet);
    return item.build(() -> product.apply(byLift), product.apply(List.of()));
  }

  private static TakeUp takeUp(Item item) {
    Fields fields = item.fields();
    TakeUp takeUp =
        new TakeUp(
            fields.require("film").quantity(Kind.MASS, Mass.ZERO, TakeUp.MOST_FILM),
            fields.require("perGramOfHair").number(0, TakeUp.MOST_PER_GRAM),
            fields
                .find("weighBacks")
                .map(i -> entries(i, TakeUp.MOST_WEIGH_BACKS, HouseReader::weighBack))
                .orElse(List.of()));
    fields.close();
    return takeUp;
  }

  private static TakeUp.WeighBack weighBack(Item item) {
    Fields fields = item.fields();
    TakeUp.WeighBack weighed =
        new TakeUp.WeighBack(
            fields.require("planned").quantity(Kind.MASS, LEAST_WEIGHED, MOST_WEIGHED),
            fields.require("used").quantity(Kind.MASS, LEAST_WEIGHED, MOST_WEIGHED),
            fields.find("date").flatMap(Item::date));
    fields.close();
    return weighed;
  }

  private static LiftWindow liftWindow(Item item) {
    Fields fields = item.fields();
    int levels = fields.require("levels").wholeNumber(1, 9);
    Minutes least = time(fields.require("least"));
    Minutes most = time(fields.require("most"));
    fields.close();
    return new LiftWindow(
        levels, item.build(() -> new TimeWindow(least, most), new TimeWindow(NO_TIME, A_DAY)));
  }

  private static MixRatio ratio(Item item) {
    String text = item.name();
    Matcher form = RATIO.matcher(text);
    double product = form.matches() ? Double.parseDouble(form.group(1)) : 0;
    if (!(product > 0)) {
      if (!text.equals("?")) {
        item.error(
            "wrong-form",
            "\"" + Fields.shortened(text) + "\" is not a ratio",
            "write product : developer by weight, such as \"1 : 1.5\"");
      }
      return new MixRatio(1, 1);
    }
    return new MixRatio(product, Double.parseDouble(form.group(2)));
  }

  /** What the label of a developer says: percent, or volumes, of which 10 go with 3 %. */
  private static Share strength(Item item) {
    return item.quantity(Kind.STRENGTH, Share.ZERO, ProductEntry.MOST_STRENGTH);
  }

  private static TimeWindow window(Item item) {
    Fields fields = item.fields();
    Minutes least = time(fields.require("least"));
    Minutes most = time(fields.require("most"));
    fields.close();
    return item.build(() -> new TimeWindow(least, most), new TimeWindow(NO_TIME, A_DAY));
  }

  private static TonerEntry toner(Item item) {
    Fields fields = item.fields();
    String name = fields.require("name").name();
    List<TonerEntry.ShadePart> shades =
        fields.require("shades").items(1).stream().map(HouseReader::shade).toList();
    MixRatio ratio = ratio(fields.require("ratio"));
    Share strength = strength(fields.require("developer"));
    TimeWindow window = window(fields.require("window"));
    Mass base = TonerEntry.USUAL_BASE;
    double perGram = TonerEntry.USUAL_PER_GRAM_OF_HAIR;
    Optional<Fields> amount = fields.find("amount").map(Item::fields);
    if (amount.isPresent()) {
      base = amount.get().require("base").quantity(Kind.MASS, Mass.ZERO, TonerEntry.MOST_BASE);
      perGram = amount.get().require("perGramOfHair").number(0, TonerEntry.MOST_PER_GRAM);
      amount.get().close();
    }
    Mass always = base;
    double perGramOfHair = perGram;
    List<TonerEntry.Saturation> steps =
        fields
            .find("saturation")
            .map(i -> i.items(1).stream().map(HouseReader::saturation).toList())
            .orElse(TonerEntry.USUAL_SATURATION);
    fields.close();
    Function<List<TonerEntry.Saturation>, TonerEntry> toner =
        saturation ->
            new TonerEntry(
                name,
                shades.isEmpty() ? List.of(new TonerEntry.ShadePart("?", 1)) : shades,
                ratio,
                strength,
                window,
                always,
                perGramOfHair,
                saturation);
    return item.build(
        () -> toner.apply(steps.isEmpty() ? TonerEntry.USUAL_SATURATION : steps),
        toner.apply(TonerEntry.USUAL_SATURATION));
  }

  private static TonerEntry.Saturation saturation(Item item) {
    Fields fields = item.fields();
    TonerEntry.Saturation step =
        new TonerEntry.Saturation(time(fields.require("at")), fields.require("words").name());
    fields.close();
    return step;
  }

  private static MixSettings mixing(Item item) {
    Fields fields = item.fields();
    MixSettings usual = MixSettings.USUAL;
    MixSettings settings =
        new MixSettings(
            fields
                .find("scaleStep")
                .map(i -> i.quantity(Kind.MASS, MixSettings.LEAST_STEP, MixSettings.MOST_STEP))
                .orElse(usual.scaleStep()),
            fields
                .find("waste")
                .map(i -> i.quantity(Kind.SHARE, Share.ZERO, Share.ofFraction(1)))
                .orElse(usual.waste()),
            fields
                .find("bowlFoils")
                .map(i -> i.wholeNumber(1, MixSettings.MOST_FOILS))
                .orElse(usual.bowlFoils()),
            fields
                .find("developers")
                .map(i -> i.items(0).stream().map(HouseReader::strength).toList())
                .orElse(usual.developers()));
    fields.close();
    return settings;
  }

  private static LiftTables lift(Item item) {
    Fields fields = item.fields();
    LiftTables usual = LiftTables.USUAL;
    List<String> warmth =
        fields.find("exposedWarmth").map(HouseReader::warmth).orElse(usual.exposedWarmth());
    int most =
        fields
            .find("mostLevelsInOneVisit")
            .map(i -> i.wholeNumber(1, 9))
            .orElse(usual.mostLevelsInOneVisit());
    fields.close();
    return new LiftTables(warmth, most);
  }

  private static List<String> warmth(Item item) {
    List<String> words = item.items(0).stream().map(Item::name).toList();
    if (item.isList() && words.size() != Level.MOST) {
      item.error(
          "out-of-range",
          words.size() + " words stand for " + Level.MOST + " levels",
          "write one for each level from 1 to " + Level.MOST);
    }
    return words.size() == Level.MOST ? words : LiftTables.USUAL.exposedWarmth();
  }

  private static TonerEntry.ShadePart shade(Item item) {
    Fields fields = item.fields();
    TonerEntry.ShadePart part =
        new TonerEntry.ShadePart(
            fields.require("shade").name(), fields.require("parts").number(0.01, 1000));
    fields.close();
    return part;
  }

  private static Map<MixSlot, String> slots(Item item, List<ProductEntry> products) {
    Fields fields = item.fields();
    List<String> known = products.stream().map(ProductEntry::name).toList();
    Map<MixSlot, String> slots = new EnumMap<>(MixSlot.class);
    for (MixSlot slot : MixSlot.values()) {
      Optional<Item> found =
          slot == MixSlot.A ? Optional.of(fields.require(slot.name())) : fields.find(slot.name());
      if (found.isPresent()) {
        String product = found.get().name();
        if (!known.contains(product) && !product.equals("?")) {
          found.get().unknownWord(product, known);
        }
        slots.put(slot, known.contains(product) ? product : known.get(0));
      }
    }
    fields.close();
    return slots;
  }

  private static FoilStock foil(Item item) {
    Fields fields = item.fields();
    Length least = Length.ofMillimetres(20);
    Length most = Length.ofMillimetres(600);
    String name = fields.require("name").name();
    Length width = fields.require("width").quantity(Kind.LENGTH, least, most);
    Length usable = fields.require("usableWidth").quantity(Kind.LENGTH, least, most);
    Length length = fields.require("length").quantity(Kind.LENGTH, least, most);
    fields.close();
    return item.build(
        () -> new FoilStock(name, width, usable, length), new FoilStock("?", most, least, most));
  }

  private static Prices prices(Item item) {
    Fields fields = item.fields();
    Prices none =
        new Prices(
            "XXX",
            BigDecimal.ZERO,
            List.of(),
            BigDecimal.ZERO,
            BigDecimal.ZERO,
            BigDecimal.ZERO,
            PriceRule.BAND);
    Item currencyItem = fields.require("currency");
    String currency = currencyItem.name();
    if (!currency.matches("[A-Z]{3}")) {
      if (!currency.equals("?")) {
        currencyItem.error(
            "wrong-form",
            "\"" + Fields.shortened(currency) + "\" is not a currency",
            "write its three capital letters, such as \"EUR\"");
      }
      currency = "XXX";
    }
    String unit = currency;
    BigDecimal perFoil = money(fields.require("perFoil"), unit);
    List<Prices.Band> bands =
        fields
            .find("bands")
            .map(i -> i.items(1).stream().map(b -> band(b, unit)).toList())
            .orElse(List.of());
    BigDecimal perHour = money(fields.require("perHour"), unit);
    BigDecimal perBowl = money(fields.require("perBowl"), unit);
    BigDecimal toner = money(fields.require("toner"), unit);
    PriceRule quoteBy =
        fields
            .find("quoteBy")
            .map(i -> i.word(PriceRule.values(), PriceRule::words))
            .orElse(PriceRule.BAND);
    fields.close();
    return item.build(
        () -> new Prices(unit, perFoil, bands, perHour, perBowl, toner, quoteBy), none);
  }

  private static Prices.Band band(Item item, String currency) {
    Fields fields = item.fields();
    Prices.Band band =
        new Prices.Band(
            fields.require("name").name(),
            fields.require("mostFoils").wholeNumber(1, 1000),
            money(fields.require("price"), currency));
    fields.close();
    return band;
  }

  private static BigDecimal money(Item item, String currency) {
    if (item.isNumber()) {
      item.error(
          "no-unit",
          "a price without its currency",
          "write the amount and the currency in quotes, such as \"4.50 " + currency + "\"");
      return BigDecimal.ZERO;
    }
    String text = item.name();
    Matcher form = MONEY.matcher(text);
    if (!form.matches()) {
      if (!text.equals("?")) {
        item.error(
            "wrong-form",
            "\"" + Fields.shortened(text) + "\" is not an amount of money",
            "write for example \"4.50 " + currency + "\"");
      }
      return BigDecimal.ZERO;
    }
    if (!form.group(2).equals(currency) && !currency.equals("XXX")) {
      item.error(
          "wrong-unit",
          "the house charges in " + currency + ", not in " + form.group(2),
          "write every price in " + currency);
    }
    return new BigDecimal(form.group(1));
  }

  private static Tolerances tolerances(Item item) {
    Fields fields = item.fields();
    Tolerances usual = Tolerances.USUAL;
    Length most = Length.ofMillimetres(100);
    Function<String, Optional<Length>> length =
        key -> fields.find(key).map(i -> i.quantity(Kind.LENGTH, Length.ZERO, most));
    Tolerances tolerances =
        new Tolerances(
            length.apply("partingStraight").orElse(usual.partingStraight()),
            length.apply("slice").orElse(usual.slice()),
            length.apply("background").orElse(usual.background()),
            fields
                .find("angle")
                .map(i -> i.quantity(Kind.ANGLE, Angle.ZERO, Angle.ofDegrees(90)))
                .orElse(usual.angle()),
            fields
                .find("foilsBetweenSides")
                .map(i -> i.wholeNumber(0, 100))
                .orElse(usual.foilsBetweenSides()));
    fields.close();
    return tolerances;
  }

  private static HeadSettings head(Item item) {
    Fields fields = item.fields();
    HeadSettings usual = HeadSettings.USUAL;
    Angle occipital =
        fields.find("occipitalLine").map(i -> angle(i, -20, 15)).orElse(usual.occipitalElevation());
    Angle ridge =
        fields.find("parietalRidge").map(i -> angle(i, 20, 60)).orElse(usual.ridgeElevation());
    Share fringe =
        fields
            .find("fringeDepth")
            .map(i -> i.quantity(Kind.SHARE, Share.ofPercent(10), Share.ofPercent(45)))
            .orElse(usual.fringeDepth());
    Length mesh =
        fields
            .find("meshEdge")
            .map(i -> i.quantity(Kind.LENGTH, Length.ofMillimetres(1), Length.ofMillimetres(10)))
            .orElse(usual.meshEdge());
    fields.close();
    return item.build(() -> new HeadSettings(occipital, ridge, fringe, mesh), usual);
  }

  private static Angle angle(Item item, double least, double most) {
    return item.quantity(Kind.ANGLE, Angle.ofDegrees(least), Angle.ofDegrees(most));
  }

  private static HandAllowances hands(Item item) {
    Fields fields = item.fields();
    HandAllowances usual = HandAllowances.USUAL;
    Length thin =
        fields
            .find("thinnestSlice")
            .map(i -> i.quantity(Kind.LENGTH, Length.ofMillimetres(0.2), Length.ofMillimetres(10)))
            .orElse(usual.thinnestSlice());
    Length thick =
        fields
            .find("thickestSlice")
            .map(i -> i.quantity(Kind.LENGTH, Length.ofMillimetres(1), Length.ofMillimetres(60)))
            .orElse(usual.thickestSlice());
    fields.close();
    return item.build(() -> new HandAllowances(thin, thick), usual);
  }

  private static RebookLengths rebook(Item item) {
    Fields fields = item.fields();
    Length least = Length.ofMillimetres(1);
    Length most = Length.ofMillimetres(300);
    Length from = fields.require("from").quantity(Kind.LENGTH, least, most);
    Length to = fields.require("to").quantity(Kind.LENGTH, least, most);
    fields.close();
    return item.build(() -> new RebookLengths(from, to), RebookLengths.USUAL);
  }
}
