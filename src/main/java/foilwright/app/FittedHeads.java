package foilwright.app;

import foilwright.document.GuestDocument;
import foilwright.hair.HairOnHead;
import foilwright.hair.HairProfile;
import foilwright.head.HairlineSettings;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.HeadSettings;
import foilwright.head.PartSetting;
import foilwright.head.TapeMeasurements;

/**
 * The heads that were fitted last, so that planning again on one of them need not measure it anew.
 */
final class FittedHeads {
  private static final int MOST = 8;

  /** All that a head depends on. */
  private record Key(
      HeadKind kind,
      TapeMeasurements tapes,
      HairlineSettings hairline,
      PartSetting part,
      HeadSettings settings) {}

  private record HairKey(Head head, HairProfile hair) {}

  private final Recent<Key, Head.Fitted> fitted = new Recent<>(MOST);
  private final Recent<HairKey, HairOnHead> hairs = new Recent<>(MOST);

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
