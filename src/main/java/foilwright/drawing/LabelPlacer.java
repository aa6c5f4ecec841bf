package foilwright.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Finds a place for every label of a picture: on the thing it names where there is room, otherwise
 * beside the picture with a straight leader line. No label overlaps another or an obstacle, no
 * leader line meets a label or an obstacle, and no two leader lines cross. The order of the wishes
 * decides who chooses first; the same wishes always give the same places.
 */
public final class LabelPlacer {
  private static final double COLUMN_STEP_MM = 0.5;

  /**
   * A label to place.
   *
   * @param name what is labelled
   * @param width of the label, millimetres
   * @param height of the label, millimetres
   * @param spots centres at which it may lie on the thing itself, best first
   * @param mayLead whether it may lie beside the picture, led to one of the spots
   */
  public record Wish(String name, double width, double height, List<Point> spots, boolean mayLead) {
    public Wish {
      spots = List.copyOf(spots);
    }
  }

  /**
   * A label that has its place.
   *
   * @param box where its ink may lie
   * @param leader from the thing to the label; empty when the label lies on the thing
   */
  public record Placed(String name, Box box, List<Point> leader) {
    public Placed {
      leader = List.copyOf(leader);
    }
  }

  /**
   * What became of the wishes.
   *
   * @param placed in the order of the wishes
   * @param unplaced names of the labels for which no place was found
   */
  public record Result(List<Placed> placed, List<String> unplaced) {
    public Result {
      placed = List.copyOf(placed);
      unplaced = List.copyOf(unplaced);
    }
  }

  private record Line(Point from, Point to) {}

  private record Offer(Box box, Point anchor, double cost) {}

  private final List<Box> columns;
  private final double gap;
  private final List<Box> taken;
  private final List<Line> leaders = new ArrayList<>();

  private LabelPlacer(List<Box> columns, List<Box> obstacles, double gap) {
    this.columns = columns;
    this.gap = gap;
    this.taken = new ArrayList<>(obstacles);
  }

  /**
   * Places labels.
   *
   * @param wishes in order of importance
   * @param columns upright strips beside the picture in which led labels may lie
   * @param obstacles boxes that no label and no leader line may touch
   * @param gap least clear space between labels, millimetres
   */
  public static Result place(
      List<Wish> wishes, List<Box> columns, List<Box> obstacles, double gap) {
    LabelPlacer placer = new LabelPlacer(columns, obstacles, gap);
    Map<Integer, Placed> found = new TreeMap<>();
    for (int i = 0; i < wishes.size(); i++) {
      int place = i;
      placer.onTheThing(wishes.get(i)).ifPresent(label -> found.put(place, label));
    }
    List<String> unplaced = new ArrayList<>();
    for (int i = 0; i < wishes.size(); i++) {
      if (found.containsKey(i)) {
        continue;
      }
      Optional<Placed> beside = placer.besideThePicture(wishes.get(i));
      if (beside.isPresent()) {
        found.put(i, beside.get());
      } else {
        unplaced.add(wishes.get(i).name());
      }
    }
    return new Result(List.copyOf(found.values()), unplaced);
  }

  private Optional<Placed> onTheThing(Wish wish) {
    for (Point spot : wish.spots()) {
      Box box = Box.centredOn(spot, wish.width(), wish.height());
      if (isFree(box)) {
        taken.add(box);
        return Optional.of(new Placed(wish.name(), box, List.of()));
      }
    }
    return Optional.empty();
  }

  private boolean isFree(Box box) {
    Box room = box.grown(gap);
    return taken.stream().noneMatch(room::overlaps)
        && leaders.stream().noneMatch(l -> room.meets(l.from(), l.to()));
  }

  private Optional<Placed> besideThePicture(Wish wish) {
    if (!wish.mayLead()) {
      return Optional.empty();
    }
    List<Offer> offers = new ArrayList<>();
    for (Box column : columns) {
      for (double y = column.y(); y + wish.height() <= column.bottom(); y += COLUMN_STEP_MM) {
        for (int k = 0; k < wish.spots().size(); k++) {
          Point spot = wish.spots().get(k);
          boolean toTheRight = column.centre().x() > spot.x();
          double x = toTheRight ? column.x() : column.right() - wish.width();
          Box box = new Box(x, y, wish.width(), wish.height());
          Point end = end(box, toTheRight);
          double cost = spot.distance(end) + Math.abs(end.y() - spot.y());
          offers.add(new Offer(box, spot, cost));
        }
      }
    }
    offers.sort(Comparator.comparingDouble(Offer::cost));
    for (Offer offer : offers) {
      boolean toTheRight = offer.box().x() > offer.anchor().x();
      Line line = new Line(offer.anchor(), end(offer.box(), toTheRight));
      if (isFree(offer.box()) && isClear(line)) {
        taken.add(offer.box());
        leaders.add(line);
        return Optional.of(new Placed(wish.name(), offer.box(), List.of(line.from(), line.to())));
      }
    }
    return Optional.empty();
  }

  private static Point end(Box box, boolean toTheRight) {
    return new Point(toTheRight ? box.x() : box.right(), box.centre().y());
  }

  private boolean isClear(Line line) {
    return taken.stream().noneMatch(box -> box.meets(line.from(), line.to()))
        && leaders.stream().noneMatch(other -> cross(line, other));
  }

  private static boolean cross(Line a, Line b) {
    return side(a, b.from()) * side(a, b.to()) <= 0 && side(b, a.from()) * side(b, a.to()) <= 0;
  }

  private static double side(Line line, Point p) {
    return (line.to().x() - line.from().x()) * (p.y() - line.from().y())
        - (line.to().y() - line.from().y()) * (p.x() - line.from().x());
  }
}
