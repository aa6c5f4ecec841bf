package foilwright.pattern;

import foilwright.anatomy.Side;
import foilwright.problem.Problem;
import foilwright.problem.Problems;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Finds what is wrong with a pattern before any head is known: names that do not fit together,
 * partings, travel and picks that contradict each other. What depends on the size of a head is left
 * to the placement. Paths are those of the pattern document.
 */
public final class PatternCheck {
  private static final Set<TravelFrom> ALONG_THE_LEVEL =
      Set.of(TravelFrom.LEFT, TravelFrom.RIGHT, TravelFrom.EAR, TravelFrom.CENTRE, TravelFrom.PART);
  private static final Set<TravelFrom> UP_AND_DOWN =
      Set.of(TravelFrom.TOP, TravelFrom.BOTTOM, TravelFrom.NAPE);

  private PatternCheck() {}

  /** Every problem, in the order of the sections; empty when there is nothing to say. */
  public static List<Problem> problems(Pattern pattern) {
    Problems problems = new Problems();
    Map<String, Integer> places = new HashMap<>();
    List<Section> sections = pattern.sections();
    for (int i = 0; i < sections.size(); i++) {
      Section section = sections.get(i);
      String path = "sections[" + i + "]";
      Integer earlier = places.putIfAbsent(section.name(), i);
      if (earlier != null) {
        problems.add(
            Problem.error(
                "duplicate-name",
                path + ".name",
                "section "
                    + (i + 1)
                    + " has the name of section "
                    + (earlier + 1)
                    + ", \""
                    + section.name()
                    + "\"",
                "give each section its own name"));
      }
    }
    for (int i = 0; i < sections.size(); i++) {
      Section section = sections.get(i);
      String path = "sections[" + i + "]";
      checkReferences(sections, places, i, problems);
      checkSides(section, path, problems);
      checkShape(section, path, problems);
      checkFill(section, path, problems);
      checkLeaveOut(section, path, problems);
    }
    return problems.toList();
  }

  private static void checkReferences(
      List<Section> sections, Map<String, Integer> places, int index, Problems problems) {
    Section section = sections.get(index);
    String path = "sections[" + index + "]";
    List<String> names = new ArrayList<>(section.region().references());
    haloReference(section).ifPresent(names::add);
    for (String name : new LinkedHashSet<>(names)) {
      String at = section.region().references().contains(name) ? path + ".region" : path + ".shape";
      Integer place = places.get(name);
      if (place == null) {
        problems.add(
            Problem.error(
                "unknown-section",
                at,
                "\"" + section.name() + "\" refers to \"" + name + "\", which is not a section",
                "use the name of an earlier section, or leave the reference out"));
      } else if (place == index || reaches(sections, places, place, index)) {
        problems.add(
            Problem.error(
                "section-cycle",
                at,
                "\""
                    + section.name()
                    + "\" and \""
                    + name
                    + "\" each need the other to be known"
                    + " first",
                "let one of them stand on its own bounds"));
      } else if (place > index) {
        problems.add(
            Problem.error(
                "section-not-earlier",
                at,
                "\"" + section.name() + "\" refers to \"" + name + "\", which is worked later",
                "move \"" + name + "\" before \"" + section.name() + "\""));
      }
    }
  }

  private static boolean reaches(
      List<Section> sections, Map<String, Integer> places, int from, int target) {
    Set<Integer> seen = new HashSet<>();
    List<Integer> open = new ArrayList<>(List.of(from));
    while (!open.isEmpty()) {
      int next = open.remove(open.size() - 1);
      if (next == target) {
        return true;
      }
      if (!seen.add(next)) {
        continue;
      }
      List<String> names = new ArrayList<>(sections.get(next).region().references());
      haloReference(sections.get(next)).ifPresent(names::add);
      for (String name : names) {
        Integer place = places.get(name);
        if (place != null) {
          open.add(place);
        }
      }
    }
    return false;
  }

  private static Optional<String> haloReference(Section section) {
    if (section.shape() instanceof SectionShape.Halo halo) {
      return halo.measuredFrom().match(l -> Optional.empty(), e -> Optional.of(e.section()));
    }
    return Optional.empty();
  }

  private static void checkSides(Section section, String path, Problems problems) {
    if (section.mirror() && section.region().keptSide() == Side.MIDDLE) {
      problems.add(
          Problem.error(
              "mirror-without-side",
              path + ".mirror",
              "\"" + section.name() + "\" is to be mirrored but already takes both sides",
              "say \"side\": \"left\" or \"right\" in its region, or leave \"mirror\" out"));
    }
  }

  private static void checkShape(Section section, String path, Problems problems) {
    String word = section.from().words();
    section
        .shape()
        .match(
            new SectionShape.Cases<Void>() {
              @Override
              public Void horizontal(SectionShape.Horizontal shape) {
                refuseStart();
                if (ALONG_THE_LEVEL.contains(section.from())) {
                  travel("horizontal partings run level and cannot travel from \"" + word + "\"");
                }
                return null;
              }

              @Override
              public Void diagonal(SectionShape.Diagonal shape) {
                refuseStart();
                return null;
              }

              @Override
              public Void vertical(SectionShape.Vertical shape) {
                refuseStart();
                if (UP_AND_DOWN.contains(section.from())) {
                  travel("vertical partings stand upright and cannot travel from \"" + word + "\"");
                }
                return null;
              }

              @Override
              public Void v(SectionShape.V shape) {
                refuseStart();
                refuseTurn("a V");
                if (ALONG_THE_LEVEL.contains(section.from())) {
                  travel(
                      "V partings follow each other along their meeting line, not from \""
                          + word
                          + "\"");
                }
                return null;
              }

              @Override
              public Void halo(SectionShape.Halo shape) {
                refuseTurn("a halo");
                refuseWedge("a halo's partings go all the way round and have no ends");
                requireStart("a halo travels away from its boundary");
                shape
                    .to()
                    .filter(to -> notMore(to, shape.from()))
                    .ifPresent(
                        to ->
                            problems.add(
                                Problem.error(
                                    "empty-range",
                                    path + ".shape",
                                    "the halo ends at "
                                        + to.text()
                                        + ", not beyond its start at "
                                        + shape.from().text(),
                                    "make \"to\" more than \"from\"")));
                return null;
              }

              @Override
              public Void pivot(SectionShape.Pivot shape) {
                refuseTurn("a pivot");
                refuseWedge("a pivot's partings close to the pivot already");
                requireStart("a pivot travels from its first angle to its last");
                double turn = Math.abs(shape.toAngle().toDegrees() - shape.fromAngle().toDegrees());
                if (turn < 1e-9 || turn > 360 + 1e-9) {
                  problems.add(
                      Problem.error(
                          "empty-range",
                          path + ".shape",
                          "the pivot turns by " + Math.round(turn) + " deg",
                          "let \"fromAngle\" and \"toAngle\" differ by more than 0 and at most 360"
                              + " deg"));
                }
                return null;
              }

              @Override
              public Void acrossFall(SectionShape.AcrossFall shape) {
                refuseStart();
                refuseTurn("partings across the fall");
                return null;
              }

              @Override
              public Void alongFall(SectionShape.AlongFall shape) {
                refuseStart();
                refuseTurn("partings along the fall");
                return null;
              }

              private void travel(String message) {
                problems.add(
                    Problem.error(
                        "travel-does-not-fit",
                        path + ".from",
                        message,
                        "start from an edge that the partings lie along"));
              }

              private void refuseStart() {
                if (section.from() == TravelFrom.START) {
                  travel("only a halo and a pivot have a start of their own");
                }
              }

              private void requireStart(String message) {
                if (section.from() != TravelFrom.START) {
                  problems.add(
                      Problem.error(
                          "travel-does-not-fit",
                          path + ".from",
                          message + ", not from \"" + word + "\"",
                          "leave \"from\" out, or write \"start\""));
                }
              }

              private void refuseTurn(String what) {
                if (section.turned().toRadians() != 0) {
                  problems.add(
                      Problem.error(
                          "turn-does-not-fit",
                          path + ".turned",
                          what + " cannot be turned",
                          "leave \"turned\" out, or use straight partings"));
                }
              }

              private void refuseWedge(String reason) {
                if (section.fill().background() instanceof Background.Wedge) {
                  problems.add(
                      Problem.error(
                          "wedge-does-not-fit",
                          path + ".fill.background",
                          reason + ", so a wedge has no place in them",
                          "use an even background"));
                }
              }
            });
  }

  private static void checkFill(Section section, String path, Problems problems) {
    Fill fill = section.fill();
    List<Pick> picks = fill.picks();
    boolean single = picks.size() == 1;
    boolean zigzagThenWeave =
        picks.size() == 2
            && picks.get(0) instanceof Pick.Zigzag
            && picks.get(1) instanceof Pick.Weave;
    if (!single && !zigzagThenWeave) {
      problems.add(
          Problem.error(
              "picks-do-not-combine",
              path + ".fill.picks",
              "these " + picks.size() + " picks cannot be made one after the other",
              "use one pick, or a zigzag and then a weave"));
    }
    Optional<Length> thinnest = thinnestSlice(fill.slice());
    for (int i = 0; i < picks.size(); i++) {
      Optional<Length> depth =
          picks
              .get(i)
              .<Optional<PickDepth>>match(
                  s -> Optional.empty(), w -> Optional.of(w.depth()), z -> Optional.of(z.depth()))
              .flatMap(d -> d.match(l -> Optional.of(l.length()), s -> Optional.empty()));
      if (depth.isPresent() && thinnest.isPresent() && depth.get().compareTo(thinnest.get()) > 0) {
        problems.add(
            Problem.warning(
                "depth-beyond-slice",
                path + ".fill.picks[" + i + "]",
                "the pick reaches " + depth.get() + " deep into a slice of " + thinnest.get(),
                "make the slice thicker or the pick shallower; it is counted as the whole slice"));
      }
    }
    if (section.brickLay() && !(fill.foils() instanceof FoilRule.Evenly)) {
      problems.add(
          Problem.warning(
              "brick-lay-without-rows",
              path + ".brickLay",
              "rows of a fixed number of foils are not shifted",
              "divide the slices evenly, or leave \"brickLay\" out"));
    }
    if (fill.background() instanceof Background.None && fill.remainder() == Remainder.STRETCH) {
      problems.add(
          Problem.error(
              "nothing-to-stretch",
              path + ".fill.remainder",
              "foils that lie back-to-back leave no background to stretch",
              "leave the remainder at the end, or balance it"));
    }
  }

  private static void checkLeaveOut(Section section, String path, Problems problems) {
    List<FoilPlace> places = section.leaveOut();
    for (int i = 0; i < places.size(); i++) {
      FoilPlace place = places.get(i);
      String at = path + ".leaveOut[" + i + "]";
      if (place.side().isPresent() && !section.mirror()) {
        problems.add(
            Problem.error(
                "leave-out-with-side",
                at,
                "\"" + place.text() + "\" names a side, but \"" + section.name() + "\" is no pair",
                "write \"" + FoilPlace.of(place.row(), place.foil()).text() + "\""));
      }
      if (places.subList(0, i).stream().anyMatch(earlier -> meet(earlier, place))) {
        problems.add(
            Problem.error(
                "leave-out-twice",
                at,
                "\"" + place.text() + "\" is left out already",
                "name each foil once"));
      }
    }
  }

  private static boolean meet(FoilPlace a, FoilPlace b) {
    return a.row() == b.row()
        && a.foil() == b.foil()
        && (a.side().isEmpty() || b.side().isEmpty() || a.side().equals(b.side()));
  }

  private static Optional<Length> thinnestSlice(Run slice) {
    if (slice.first() instanceof Extent.Absolute first
        && slice.last() instanceof Extent.Absolute last) {
      return Optional.of(
          first.length().compareTo(last.length()) <= 0 ? first.length() : last.length());
    }
    return Optional.empty();
  }

  private static boolean notMore(Extent to, Extent from) {
    if (to instanceof Extent.Absolute a && from instanceof Extent.Absolute b) {
      return a.length().compareTo(b.length()) <= 0;
    }
    return to instanceof Extent.Proportion p
        && from instanceof Extent.Proportion q
        && p.of() == q.of()
        && p.fraction() <= q.fraction();
  }
}
