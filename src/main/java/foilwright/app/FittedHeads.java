package foilwright.app;

import foilwright.document.GuestDocument;
import foilwright.fall.Body;
import foilwright.fall.HairStyle;
import foilwright.fall.NaturalFall;
import foilwright.fall.SimulatedFall;
import foilwright.geometry.surface.DirectionField;
import foilwright.hair.HairOnHead;
import foilwright.hair.HairProfile;
import foilwright.head.HairlineSettings;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.HeadSettings;
import foilwright.head.PartSetting;
import foilwright.head.TapeMeasurements;
import foilwright.pattern.Pattern;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.placement.Placer;

/**
 * The heads that were fitted last and what was found out about them, so that planning again on one
 * of them need not do it anew.
 */
final class FittedHeads {
  private static final int MOST = 8;

  /** Patterns that are changed at the same time. */
  private static final int MOST_LAID = 32;

  /** All that a head depends on. */
  private record Key(
      HeadKind kind,
      TapeMeasurements tapes,
      HairlineSettings hairline,
      PartSetting part,
      HeadSettings settings) {}

  /** A pattern keeps its title through most changes. */
  private record LaidKey(HairOnHead hair, String title) {}

  private record HairKey(Head head, HairProfile hair) {}

  private final Recent<Key, Head.Fitted> fitted = new Recent<>(MOST);
  private final Recent<HairKey, HairOnHead> hairs = new Recent<>(MOST);
  private final Recent<Head, DirectionField> falls = new Recent<>(MOST);
  private final Recent<HairOnHead, DirectionField> followed = new Recent<>(MOST);
  private final Recent<LaidKey, Placer.Laid> laid = new Recent<>(MOST_LAID);

  /** One at a time, so that two that ask at once get the same head. */
  synchronized Head.Fitted fit(GuestDocument guest, HeadSettings settings) {
    Key key = new Key(guest.head(), guest.tapes(), guest.hairline(), guest.part(), settings);
    return fitted
        .find(key)
        .orElseGet(
            () -> {
              Head.Fitted fit = guest.fitHead(settings);
              fitted.keep(key, fit);
              return fit;
            });
  }

  /** How the hair lies: followed hair by hair where a section goes by it, else by gravity. */
  DirectionField fall(Pattern pattern, HairOnHead hair) {
    boolean goesByFall =
        pattern.sections().stream()
            .map(Section::shape)
            .anyMatch(
                shape ->
                    shape instanceof SectionShape.AcrossFall
                        || shape instanceof SectionShape.AlongFall);
    return goesByFall ? followedFall(hair) : naturalFall(hair.head());
  }

  /** The way in which hair on a head falls by itself. */
  private synchronized DirectionField naturalFall(Head head) {
    return falls
        .find(head)
        .orElseGet(
            () -> {
              DirectionField fall = NaturalFall.over(head);
              falls.keep(head, fall);
              return fall;
            });
  }

  /** The way in which hairs lie that were followed one by one. */
  private synchronized DirectionField followedFall(HairOnHead hair) {
    return followed
        .find(hair)
        .orElseGet(
            () -> {
              DirectionField fall =
                  SimulatedFall.over(hair, Body.of(hair.head()), HairStyle.NATURAL);
              followed.keep(hair, fall);
              return fall;
            });
  }

  /** What was laid last of a pattern, to begin from. */
  Placer.Laid laid(HairOnHead hair, Pattern pattern) {
    return laid.find(new LaidKey(hair, pattern.title())).orElse(Placer.Laid.NOTHING);
  }

  void keep(HairOnHead hair, Pattern pattern, Placer.Laid last) {
    laid.keep(new LaidKey(hair, pattern.title()), last);
  }

  /** Hair on one of the heads. */
  synchronized HairOnHead hair(Head head, HairProfile profile) {
    HairKey key = new HairKey(head, profile);
    return hairs
        .find(key)
        .orElseGet(
            () -> {
              HairOnHead hair = HairOnHead.of(head, profile);
              hairs.keep(key, hair);
              return hair;
            });
  }
}
